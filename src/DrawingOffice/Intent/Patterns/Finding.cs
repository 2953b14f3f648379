using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Words;

namespace WitnessMark.DrawingOffice.Intent.Patterns;

/// <summary>What features may have been meant to have in common.</summary>
public enum PatternKind
{
    /// <summary>Holes, slots or arcs of one size.</summary>
    EqualSize,

    /// <summary>A diameter, width or radius on the lists.</summary>
    RoundSize,

    Parallel,

    Square,

    /// <summary>Two directions at another usual angle: 15, 30, 45, 60, 75 degrees.</summary>
    SetAngle,

    /// <summary>Places on one line.</summary>
    InLine,

    /// <summary>Gaps of one length along a line.</summary>
    EquallySpaced,

    /// <summary>Places at one distance from a centre.</summary>
    PitchCircle,

    /// <summary>Equal steps of angle round a centre.</summary>
    EqualSteps,

    /// <summary>Pairs, or single places, set evenly about one centre line.</summary>
    Symmetric,

    Tangent,

    Concentric,

    /// <summary>A place on an edge.</summary>
    OnEdge,

    /// <summary>A distance on the lists, along or across the part's own direction or straight from centre to centre.</summary>
    RoundDistance,
}

/// <summary>What became of a hypothesis.</summary>
public enum Standing
{
    /// <summary>Found and drawn.</summary>
    Accepted,

    /// <summary>Follows from the accepted ones; counted in no odds.</summary>
    Implied,

    /// <summary>Drawn because the person says so.</summary>
    Forced,

    /// <summary>Left out because the person says so.</summary>
    Refused,

    /// <summary>Near, yet not good enough; the words say why.</summary>
    Rejected,
}

/// <summary>A value off a list.</summary>
/// <param name="Value">mm, or radians of an angle.</param>
/// <param name="Name">As a person would ask for it: <c>1/2 in</c>, <c>12 mm</c>, <c>30°</c>.</param>
public sealed record Nominal(double Value, string Name, string Series);

/// <summary>How far a condition moved the feature that it moved most, mm.</summary>
public readonly record struct Move(string Feature, double Distance);

/// <summary>One thing that the draughtsman may have meant, with its evidence.</summary>
/// <param name="Key">Short stable name by which it can be refused or forced, such as <c>equal:H1,H2</c>.</param>
/// <param name="Features">The features that share it, in the sample's order.</param>
/// <param name="About">Centre of a pitch circle, or the edge or direction that a line or row keeps to; null where there is none.</param>
/// <param name="Nominal">The value that it gives; null where it gives none.</param>
/// <param name="ChiSquare">Squared distance of the readings from it, in standard deviations of measuring and making together, everything accepted before it holding.</param>
/// <param name="Freedom">Conditions that it adds; 0 where it is implied.</param>
/// <param name="LogOdds">Natural logarithm of the odds for it against chance, below 0 against it; null where the person forced or refused it, so that nothing was weighed.</param>
/// <param name="Words">One plain sentence.</param>
public sealed record Finding(
    string Key,
    PatternKind Kind,
    ImmutableArray<string> Features,
    string? About,
    Nominal? Nominal,
    Standing Standing,
    double ChiSquare,
    int Freedom,
    double? LogOdds,
    Move? Moved,
    string Words)
{
    public bool Holds => Standing is Standing.Accepted or Standing.Implied or Standing.Forced;

    /// <summary>The odds as a person says them, never more than a million to one; null where none were weighed.</summary>
    public string? Odds => Freedom > 0 && LogOdds is { } log ? PatternWords.OddsFor(log) : null;

    /// <summary>Chance of readings at least so far off if it was meant; 1 where it adds nothing.</summary>
    public double Tail => Freedom == 0 ? 1 : Maths.Statistics.ChiSquare.Above(ChiSquare, Freedom);
}
