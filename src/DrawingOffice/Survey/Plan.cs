using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey;

/// <summary>How the adjustment ended.</summary>
/// <param name="Converged">False: the figures are those of the last step and must not be relied on.</param>
/// <param name="Words">One plain sentence.</param>
public sealed record Convergence(bool Converged, int Iterations, double LastStep, string Words);

/// <summary>
/// Where a feature is, in the plan's own frame (first sketch frame, inner constraints: the ± does not lean on any one corner).
/// </summary>
/// <param name="At">Point, centre, slot middle, or foot of a free edge, mm.</param>
/// <param name="Turn">Direction of a slot or edge, radians; 0 otherwise.</param>
/// <param name="Size">Diameter, radius or slot width, mm; null where the kind has none.</param>
/// <param name="Length">Distance between a slot's end centres or an edge's corners, mm.</param>
/// <param name="Ellipse">Standard ellipse of <paramref name="At"/>.</param>
/// <param name="Loose">Not fixed by the readings; its ± then means nothing.</param>
public sealed record Placed(string Id, FeatureKind Kind, Vec2 At, double Turn, Uncertain? Size, Uncertain? Length, Ellipse Ellipse, bool Loose)
{
    /// <summary>Of a repaired feature place and size are those it has now; of a worn one those it was made to.</summary>
    public FeatureCondition Condition { get; init; }
}

/// <summary>Standard (one-sigma) ellipse: half-axes mm, direction of the longer, radians.</summary>
public readonly record struct Ellipse(double Major, double Minor, double Turn);

/// <summary>What the adjustment says of one reading. Residual = adjusted − reading.</summary>
/// <param name="RedundancyNumber">0 (nothing checks it) to 1 (fully checked).</param>
/// <param name="Normalised">Residual over its own standard deviation; null where nothing checks the reading.</param>
/// <param name="SmallestDetectable">Least gross error found with power 0.8 at the survey's critical value, mm or rad; null where none can be.</param>
/// <param name="Doubtful">Convicted, alone or in a group.</param>
public sealed record ReadingResult(int Index, double Adjusted, double Residual, double RedundancyNumber, double? Normalised, double? SmallestDetectable, bool Doubtful)
{
    /// <summary>False in a plan from which the reading was set aside.</summary>
    public bool Used { get; init; } = true;

    /// <summary>What the reading says of the size that was made.</summary>
    public MadeBound Says { get; init; }

    /// <summary>Mean wear that was reckoned with at a reading that bounds from one side, mm; 0 for others. What the plan says has worn is the residual's size.</summary>
    public double WearScale { get; init; }

    /// <summary>Of a reading that bounds from one side: what all others foretell of the made size; null where they do not.</summary>
    public double? Foretold { get; init; }

    /// <summary>
    /// What the reading would have to be for all others to be right: reading + residual / redundancy number, or what a plan without
    /// it foretells. Null where nothing checks it. A slip of the main scale or a swapped figure often shows here.
    /// </summary>
    public double? WouldRead => !Used ? Adjusted : Foretold ?? (Normalised is null ? null : Adjusted - Residual + Residual / RedundancyNumber);
}

/// <summary>The readings' global test: weighted sum of squares against chi-square. Low is 0 where places of a photograph take part (<c>OnceOnly</c>).</summary>
public sealed record GlobalTest(double Statistic, int Redundancy, double Low, double High, bool Passes);

/// <summary>One step of data snooping: what was largest, and against which critical value.</summary>
public sealed record SnoopStep(ImmutableArray<int> Removed, double WeightedSumOfSquares, int Redundancy, int? Largest, double Value, double Critical, ImmutableArray<int> TiedWith);

/// <summary>The verdict on gross errors.</summary>
/// <param name="Indices">All readings under doubt, single ones and members of groups; empty when none.</param>
/// <param name="Groups">Readings of which at least one is wrong but no reading at hand says which.</param>
/// <param name="Confirmed">A robust re-fit over all readings points at the same ones.</param>
public sealed record Doubts(ImmutableArray<int> Indices, ImmutableArray<ImmutableArray<int>> Groups, ImmutableArray<SnoopStep> Steps, bool Confirmed, string Words)
{
    /// <summary>Readings accused alone: these are set aside. Members of a group stay in, since setting all of them aside would throw good readings away.</summary>
    public ImmutableArray<int> Alone => [.. Indices.Where(i => !Groups.Any(g => g.Contains(i)))];

    /// <summary>What is still in doubt once those accused alone are set aside.</summary>
    internal Doubts OfTheRest => this with { Indices = [.. Groups.SelectMany(g => g).Distinct().Order()], Steps = [] };
}

/// <summary>Features that move together, not held by the readings.</summary>
/// <param name="Motions">For each free motion the arrow of each feature, longest arrow 1.</param>
public sealed record LooseGroup(ImmutableArray<string> Ids, int FreeMotions, string Reason, int ReadingsMissing, ImmutableArray<ImmutableArray<Arrow>> Motions);

/// <summary>Which way a feature can move.</summary>
/// <param name="Grow">Rate of its size.</param>
public readonly record struct Arrow(string Id, Vec2 Move, double Grow);

/// <summary>A second shape that fits the readings as well.</summary>
/// <param name="About">The two features through which the mirror line runs; empty when the two shapes are not mirror images.</param>
/// <param name="Second">The second shape: places of the features that differ.</param>
/// <param name="Deciding">Readings that tell the two apart, best first.</param>
public sealed record Mirror(ImmutableArray<string> Flips, ImmutableArray<string> About, double WeightedSumOfSquares, ImmutableArray<PairDistance> Second, ImmutableArray<Deciding> Deciding);

public sealed record Deciding(string From, string To, double First, double Second);

/// <summary>An adjusted centre distance, mm.</summary>
public readonly record struct PairDistance(string From, string To, double Distance, double Std);

/// <summary>A reading worth taking next.</summary>
/// <param name="Gain">Free motions it removes (whole numbers), else how far the largest wanted uncertainty falls, mm.</param>
public sealed record NextReading(ReadingKind Kind, string From, string? To, double Expected, string Instrument, double Gain, string Words);

/// <summary>The adjusted true shape of a sample, with everything the readings say of it.</summary>
public sealed record Plan(
    ImmutableArray<Placed> Features,
    Convergence Convergence,
    int Unknowns,
    int DatumFreedoms,
    int LooseFreedoms,
    int Redundancy,
    double WeightedSumOfSquares,
    GlobalTest Global,
    double Critical,
    ImmutableArray<ReadingResult> Readings,
    Doubts Doubts,
    ImmutableArray<LooseGroup> Loose,
    ImmutableArray<Mirror> Mirrors)
{
    /// <summary>The plan with the readings accused alone set aside; null when there are none.</summary>
    public Plan? WithoutDoubtful { get; init; }

    /// <summary>The scale found for each frame of picks that has one of its own.</summary>
    public ImmutableArray<FrameScale> Scales { get; init; } = [];

    /// <summary>The plan to draw from.</summary>
    public Plan Believed => WithoutDoubtful ?? this;

    internal Solver Solver { get; init; } = null!;

    internal Fit Fit { get; init; } = null!;

    /// <summary>Where the search for second shapes came upon a better one than this plan.</summary>
    internal double[]? BetterStart { get; init; }

    public Placed Of(string id) => Features.First(f => f.Id == id);

    /// <summary>Adjusted distance between two centres or corners, mm; null where the readings leave it free.</summary>
    public Uncertain? Distance(string a, string b) => Quantity(ReadingKind.CentreDistance, a, b);

    /// <summary>What a reading of this kind would give, with the ± of the plan alone (mm or radians); null where it is free.</summary>
    public Uncertain? Quantity(ReadingKind kind, string from, string? to = null)
    {
        var opposite = Enumerable.Range(0, Solver.Layout.Features.Length).FirstOrDefault(Solver.Layout.HasPlace);
        var quantity = new Observed(kind, Solver.Layout.IndexOf(from), to is null ? -1 : Solver.Layout.IndexOf(to), 0, 1, -1, kind == ReadingKind.AcrossEdges ? opposite : 0);
        return Quantities.Of(Solver, Fit, quantity);
    }

    /// <summary>The distance of every pair of centres or corners that is determined, in the sample's order.</summary>
    public IEnumerable<PairDistance> Distances() => Pairs().Where(p => p.Distance is not null).Select(p => new PairDistance(p.A, p.B, p.Distance!.Value.Value, p.Distance.Value.Std));

    /// <summary>The pairs whose distance is not determined.</summary>
    public IEnumerable<(string A, string B)> UndeterminedDistances() => Pairs().Where(p => p.Distance is null).Select(p => (p.A, p.B));

    IEnumerable<(string A, string B, Uncertain? Distance)> Pairs() =>
        Quantities.Distances(Solver, Fit).Select(p => (Solver.Layout.Features[p.A].Id, Solver.Layout.Features[p.B].Id, p.Distance));
}
