using System.Collections.Immutable;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>Why a point is open.</summary>
public enum PointKind
{
    /// <summary>A reading on the sample's own list was not taken.</summary>
    Wanted,

    /// <summary>An entry cannot be understood, or the readings together make no plan.</summary>
    NotCounted,

    /// <summary>A feature is not held by the readings.</summary>
    Loose,

    /// <summary>A second shape fits as well.</summary>
    Mirror,

    /// <summary>A reading is doubtful and was not taken again.</summary>
    Doubtful,

    /// <summary>A reading is checked by no other.</summary>
    Unchecked,

    /// <summary>Dimensions are less sure than wanted.</summary>
    Unsure,

    /// <summary>What a size was made to is undecided.</summary>
    Size,

    /// <summary>No photograph is kept.</summary>
    Photograph,
}

/// <summary>One thing still open on a sample.</summary>
/// <param name="Key">The same as long as the same thing is open, in whatever order the list stands.</param>
/// <param name="Words">What is open, one sentence.</param>
/// <param name="Do">What to do about it, one sentence.</param>
public sealed record OpenPoint(string Key, PointKind Kind, string Words, string Do)
{
    /// <summary>Why the person says that it is not needed; null while it counts.</summary>
    public string? NotNeeded { get; init; }
}

/// <summary>Whether a sample may go back.</summary>
/// <param name="Words">The verdict, one sentence.</param>
/// <param name="Points">Most pressing first; those marked as not needed stay among them.</param>
/// <param name="Cautions">What the verdict cannot know.</param>
public sealed record LoanStanding(string Words, ImmutableArray<OpenPoint> Points, ImmutableArray<string> Cautions)
{
    public ImmutableArray<OpenPoint> Open => [.. Points.Where(p => p.NotNeeded is null)];

    /// <summary>Nothing is open but what the person says is not needed.</summary>
    public bool Ready => Open.IsEmpty;
}
