using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.DrawingOffice.Survey.Solid.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>Standard (one-sigma) ellipsoid: half-axes as arrows, mm, longest first.</summary>
public readonly record struct Ellipsoid(Vec3 Major, Vec3 Middle, Vec3 Minor);

/// <summary>Where a feature is, in the plan's own frame (that of the sketch, inner constraints: the ± does not lean on any one corner).</summary>
/// <param name="At">Point, centre, middle of an edge with corners, or a place of the face, line or axis near its features, mm.</param>
/// <param name="Direction">Length 1: a face's outward normal, a line's or axis's direction, a set-up's upward; zero for a point.</param>
/// <param name="DirectionStd">Largest standard uncertainty of the direction, radians; 0 where it has none.</param>
/// <param name="Size">Diameter, mm; null where the kind has none or the readings leave it free.</param>
/// <param name="Length">Distance between an edge's corners, mm.</param>
/// <param name="Ellipsoid">Of <paramref name="At"/>, for points and holes; zero otherwise.</param>
/// <param name="Loose">Not fixed by the readings; its ± then means nothing.</param>
public sealed record SolidPlaced(string Id, SolidKind Kind, Vec3 At, Vec3 Direction, double DirectionStd, Uncertain? Size, Uncertain? Length, Ellipsoid Ellipsoid, bool Loose);

/// <summary>Which way a feature can move.</summary>
/// <param name="Move">Of a point or centre; of a face along its normal.</param>
/// <param name="Turn">Rate of its direction.</param>
/// <param name="Grow">Rate of its diameter.</param>
public readonly record struct SolidArrow(string Id, Vec3 Move, Vec3 Turn, double Grow);

/// <summary>Features that move together, not held by the readings.</summary>
/// <param name="Motions">For each free motion the arrow of each feature, longest arrow 1.</param>
public sealed record SolidLooseGroup(ImmutableArray<string> Ids, int FreeMotions, string Reason, int ReadingsMissing, ImmutableArray<ImmutableArray<SolidArrow>> Motions);

/// <summary>A second shape that fits the readings as well.</summary>
/// <param name="Flips">Features that lie elsewhere in it.</param>
/// <param name="About">The face, or the three features, through which the mirror runs.</param>
/// <param name="Second">Distances of the second shape that differ.</param>
/// <param name="Deciding">Readings that tell the two apart, best first.</param>
public sealed record SolidMirror(ImmutableArray<string> Flips, ImmutableArray<string> About, double WeightedSumOfSquares, ImmutableArray<PairDistance> Second, ImmutableArray<Deciding> Deciding);

/// <summary>Whether the readings tell the part from its mirror image, left hand from right.</summary>
public sealed record Hand(bool Told, string Words);

/// <summary>The adjusted true shape of a part in space, with everything the readings say of it.</summary>
/// <param name="Sample">With the flat faces joined: their features, and their readings after the solid survey's own. Readings are counted in this list.</param>
public sealed record SolidPlan(
    SolidSample Sample,
    ImmutableArray<SolidPlaced> Features,
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
    ImmutableArray<SolidLooseGroup> Loose,
    ImmutableArray<SolidMirror> Mirrors,
    Hand Hand)
{
    /// <summary>The plan with the readings accused alone set aside; null when there are none.</summary>
    public SolidPlan? WithoutDoubtful { get; init; }

    /// <summary>The plan to draw from.</summary>
    public SolidPlan Believed => WithoutDoubtful ?? this;

    public SolidPlaced Of(string id) => Features.First(f => f.Id == id);

    /// <summary>Adjusted distance between two centres or corners, mm; null where the readings leave it free.</summary>
    public Uncertain? Distance(string a, string b) => Quantity(SolidReadingKind.Distance, a, b);

    /// <summary>
    /// What a reading of this kind would give, with the ± of the plan alone (mm or radians); null where it is free. An angle comes
    /// as the smaller of the two (<see cref="Setting"/> tells which a bevel shows). Refused for conditions and readings on a face, which have no value of their own.
    /// </summary>
    public Uncertain? Quantity(SolidReadingKind kind, string from, string? to = null)
    {
        if (SolidObservations.IsCondition(kind) || kind == SolidReadingKind.OnFace) throw new RefusedException(Refusal.Of("quantity", kind.ToString(), "ask for a length or an angle"));
        return SolidQuantities.Of(Solver, Fit, SolidObservations.Quantity(Solver.Layout, kind, Solver.Layout.IndexOf(from), to is null ? -1 : Solver.Layout.IndexOf(to)).First());
    }

    /// <summary>The angle in the corner between two faces as a bevel shows it, radians, 0 to π; null where it is free. The faces must not be parallel.</summary>
    public Uncertain? Setting(string face, string other) => Quantity(SolidReadingKind.Angle, face, other) is { } angle
        ? angle with { Value = BetweenFaces.Shown(Solver, Fit.X, Solver.Layout.IndexOf(face), Solver.Layout.IndexOf(other), angle.Value) } : null;

    /// <summary>The distance of every pair of centres or corners that is determined, in the sample's order.</summary>
    public IEnumerable<PairDistance> Distances() =>
        from p in SolidQuantities.Distances(Solver, Fit)
        where p.Distance is not null
        let d = p.Distance.GetValueOrDefault()
        select new PairDistance(Solver.Layout.Features[p.A].Id, Solver.Layout.Features[p.B].Id, d.Value, d.Std);

    /// <summary>Lines to draw the plan from.</summary>
    public Wireframe Wireframe() => WireframeMaker.Of(this);

    internal SolidSolver Solver { get; init; } = null!;

    internal Fit Fit { get; init; } = null!;

    /// <summary>Where the search for second shapes came upon a better one than this plan.</summary>
    internal double[]? BetterStart { get; init; }
}
