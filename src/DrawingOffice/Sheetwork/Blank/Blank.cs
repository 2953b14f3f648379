using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>A face as it lies in the blank.</summary>
/// <param name="Outline">Blank's frame, mm, reliefs cut.</param>
/// <param name="Openings">Moved true into the blank's frame.</param>
/// <param name="Pose">Where the face's own frame lies.</param>
public sealed record BlankFace(string Id, Loop Outline, ImmutableArray<Opening> Openings, Pose2 Pose);

/// <summary>
/// A bend as it lies in the blank: the strip between two tangent lines. The bend line is its middle.
/// </summary>
/// <param name="From">Start of the parent's tangent line; <paramref name="To"/> its end, mm.</param>
/// <param name="Out">Square to it, from parent to child, length 1.</param>
/// <param name="Angle">From flat, radians, positive up.</param>
/// <param name="InsideRadius">mm.</param>
public sealed record BendLine(string Parent, string Child, Vec2 From, Vec2 To, Vec2 Out, double Angle, double InsideRadius, BendAllowance Allowance)
{
    /// <summary>As cautions and orders name it.</summary>
    public string Id => $"{Parent}-{Child}";

    public Vec2 MiddleFrom => From + Out * (Allowance.Length / 2);

    public Vec2 MiddleTo => To + Out * (Allowance.Length / 2);

    public Vec2 FarFrom => From + Out * Allowance.Length;

    public Vec2 FarTo => To + Out * Allowance.Length;
}

/// <summary>
/// The flat shape before folding, mm, in the root face's frame, seen from the upper side. Only the outline and the openings are cut;
/// bend lines are marked.
/// </summary>
/// <param name="Outline">One closed outline, anticlockwise.</param>
/// <param name="CornerReliefArea">Metal bitten out of the strips and faces where two bends meet at a corner, mm².</param>
public sealed record Blank(
    string Title,
    double Thickness,
    Loop Outline,
    ImmutableArray<BlankFace> Faces,
    ImmutableArray<BendLine> BendLines,
    double CornerReliefArea,
    ImmutableArray<Caution> Cautions)
{
    /// <summary>All openings, in the blank's frame.</summary>
    public IEnumerable<Opening> Openings => Faces.SelectMany(f => f.Openings);

    /// <summary>Metal in the blank, mm².</summary>
    public double Area => Outline.Area - Openings.Sum(o => o.Edge.Area);

    /// <summary>
    /// Area of the outline less that of the faces and bend strips it was made from, as a share of the outline's: 0 to rounding
    /// (some 1e-12) when nothing was lost or counted twice.
    /// </summary>
    public double AreaImbalance =>
        (Outline.SignedArea + CornerReliefArea - Faces.Sum(f => f.Outline.SignedArea) - BendLines.Sum(b => b.From.DistanceTo(b.To) * b.Allowance.Length)) / Outline.Area;
}
