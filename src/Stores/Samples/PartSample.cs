using System.Collections.Immutable;

namespace WitnessMark.Stores;

/// <summary>Where a sample comes from.</summary>
public enum SampleOrigin { TakenOff, Borrowed, Photographed }

/// <summary>An original that is measured: taken off the vehicle, borrowed, or known from a photograph.</summary>
/// <param name="Loan">Only for a borrowed one.</param>
/// <param name="Wanted">The readings that must be taken before the sample may go; empty when nobody has listed any.</param>
public sealed record PartSample(
    Guid Id, Guid PartId, string Title, SampleOrigin Origin, Loan? Loan, ImmutableArray<WantedReading> Wanted)
{
    /// <summary>Which wanted readings no standing reading answers. Kind and features are compared as written, without case, in either direction.</summary>
    public ImmutableArray<WantedReading> StillMissing(IEnumerable<ReadingEntry> standing)
    {
        var taken = standing.ToList();
        return [.. Wanted.Where(w => !taken.Any(w.AnsweredBy))];
    }
}

/// <summary>A reading that must not be forgotten, in the words of the reading sheet.</summary>
/// <param name="To">Empty where the kind needs one feature only.</param>
public sealed record WantedReading(string Kind, string From, string To, string Why)
{
    public bool AnsweredBy(ReadingEntry taken) =>
        Same(Kind, taken.Kind) && (Same(From, taken.From) && Same(To, taken.To) || Same(From, taken.To) && Same(To, taken.From));

    static bool Same(string a, string b) => string.Equals(a.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);
}
