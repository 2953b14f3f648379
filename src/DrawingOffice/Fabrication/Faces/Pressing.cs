using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>A point of a pressing as measured.</summary>
/// <param name="At">mm.</param>
/// <param name="Std">Standard uncertainty along x, y and z, mm; 0 where none is given.</param>
public sealed record PressingPoint(string Name, Vec3 At, Vec3 Std);

/// <summary>A round hole as measured: its middle, moved square onto its face.</summary>
/// <param name="Diameter">mm.</param>
public sealed record PressingHole(string Name, Vec3 At, double Diameter);

/// <summary>A slot with round ends as measured.</summary>
/// <param name="From">Middle of one end's round, mm.</param>
/// <param name="To">Middle of the other's.</param>
/// <param name="Width">mm.</param>
public sealed record PressingSlot(string Name, Vec3 From, Vec3 To, double Width);

/// <summary>A flat face: the names of its points in order round it, either way.</summary>
public sealed record PressingFace(string Name, ImmutableArray<string> Ring)
{
    public ImmutableArray<PressingHole> Holes { get; init; } = [];

    public ImmutableArray<PressingSlot> Slots { get; init; } = [];

    /// <summary>Cut-outs: names of their points in order.</summary>
    public ImmutableArray<ImmutableArray<string>> CutOuts { get; init; } = [];
}

/// <summary>What a person asks of the joint of two faces.</summary>
public enum JointWish
{
    /// <summary>Fold or weld, whichever is less work.</summary>
    Free,

    FoldOnly,

    WeldOnly,

    /// <summary>The two faces must stay in one piece of sheet, by this fold or by others.</summary>
    OnePiece,
}

/// <summary>A wish for the joint of two faces, by their names.</summary>
public sealed record Wish(string First, string Second, JointWish Kind)
{
    /// <summary>Inside radius of the fold, mm; null takes the pressing's.</summary>
    public double? InsideRadius { get; init; }
}

/// <summary>Where one face of the pressing lies on another part and was spot welded to it.</summary>
/// <param name="Thinner">Thickness of the thinner sheet, mm.</param>
/// <param name="Spots">Spot welds that were there.</param>
/// <param name="Row">Length of their row, mm.</param>
public sealed record SpotRow(string Name, string Face, string Onto, double Thinner, int Spots, double Row);

/// <summary>On which surface of the sheet the points were taken.</summary>
public enum PointsOn
{
    /// <summary>The side of the first face from which its ring is seen anticlockwise, and the same side of the sheet all over.</summary>
    Upper,

    Middle,

    Lower,
}

/// <summary>A pressing as flat faces in space, as measured or typed; mm. <see cref="FaceModel.Of"/> makes it sound.</summary>
public sealed record Pressing(string Title, double Thickness, ImmutableArray<PressingPoint> Points, ImmutableArray<PressingFace> Faces)
{
    public PointsOn PointsOn { get; init; } = PointsOn.Middle;

    /// <summary>Inside radius of folds, mm.</summary>
    public double InsideRadius { get; init; } = 1.5;

    /// <summary>How far a point may lie off the plane of its face, mm; beyond it the pressing is refused.</summary>
    public double FlatWithin { get; init; } = 0.5;

    public ImmutableArray<Wish> Wishes { get; init; } = [];

    public ImmutableArray<SpotRow> Spots { get; init; } = [];

    /// <summary>Of all coordinates together (x, y, z of point 0, then of point 1, …), mm², row by row; empty: the points' own ± apart from each other.</summary>
    public ImmutableArray<double> Covariance { get; init; } = [];
}
