using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Stores;

namespace WitnessMark.Web.Client.DrawingOffice.Measure;

/// <summary>Where an entry stands between the page and the records.</summary>
public enum Standing { Kept, Waiting, Refused }

/// <summary>A reading in the list: as written, as understood, and what the plan says of it.</summary>
/// <param name="Number">From 1, in the order written; null when it does not count.</param>
/// <param name="Why">Why it does not count: it cannot be understood, or the host refused it.</param>
/// <param name="Read">As understood; null when it does not count.</param>
/// <param name="Result">Null while there is no plan.</param>
public sealed record Line(int? Number, ReadingEntry Entry, Standing Standing, string? Why, Reading? Read, ReadingResult? Result)
{
    public bool Doubtful => Result?.Doubtful == true;

    /// <summary>Nothing else would show it if it were wrong.</summary>
    public bool Unchecked => Result is { RedundancyNumber: < 0.01 };
}
