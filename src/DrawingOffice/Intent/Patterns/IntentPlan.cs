using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns;

/// <summary>A feature as it was meant: every accepted condition holds exactly. In the plan's own frame.</summary>
/// <param name="At">As in <see cref="Placed.At"/>, mm.</param>
/// <param name="Turn">Radians; 0 where the kind has none.</param>
/// <param name="Size">Diameter, radius or width, mm; the made-to size where one was accepted, else as measured.</param>
/// <param name="Length">Between a slot's end centres, mm.</param>
/// <param name="Moved">From where the readings put it, mm.</param>
public sealed record MeantFeature(string Id, FeatureKind Kind, Vec2 At, double Turn, double? Size, double? Length, double Moved);

/// <summary>Two readings of the draughtsman's mind that are about equally good.</summary>
/// <param name="First">Key of the one that was taken.</param>
/// <param name="Second">Key of the other.</param>
/// <param name="Odds">Of the first against the second.</param>
/// <param name="Reading">What to measure again to tell them apart; null where making spread hides the difference and no reading can.</param>
public sealed record Undecided(string First, string Second, double Odds, string? Reading, string Words);

/// <summary>What the person asks of the search.</summary>
public sealed record IntentWish
{
    /// <summary>Keys that are not to be taken. A refused group also refuses each pair in it.</summary>
    public ImmutableArray<string> Refused { get; init; } = [];

    /// <summary>Keys that are to hold whatever the readings say.</summary>
    public ImmutableArray<string> Forced { get; init; } = [];

    public OriginPrior Prior { get; init; } = OriginPrior.Unknown;

    public Making Making { get; init; } = Making.ByHand;
}

/// <summary>How far the search is.</summary>
public readonly record struct IntentProgress(int Done, int Of);

/// <summary>A plan with what the draughtsman meant by it.</summary>
/// <param name="Plan">The plan that the readings give; nothing in it is changed.</param>
/// <param name="Meant">Every determined feature as meant.</param>
/// <param name="Findings">Accepted and forced first, then implied, refused and rejected.</param>
/// <param name="Origins">Inch against metric after all evidence.</param>
/// <param name="Conditions">Independent conditions that hold.</param>
/// <param name="Test">All conditions together against chi-square: how well a part made as told agrees with the readings.</param>
/// <param name="Words">The verdict in a sentence or two.</param>
public sealed record IntentPlan(
    Plan Plan,
    ImmutableArray<MeantFeature> Meant,
    ImmutableArray<Finding> Findings,
    ImmutableArray<Undecided> Undecided,
    ImmutableArray<OriginOdds> Origins,
    int Conditions,
    GlobalTest Test,
    ImmutableArray<string> Cautions,
    string Words)
{
    public IEnumerable<Finding> Held => Findings.Where(f => f.Holds);

    public MeantFeature? Of(string id) => Meant.FirstOrDefault(f => f.Id == id);
}
