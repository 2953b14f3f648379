using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>The flat of one face on the blank, by chords, and which of its sides are folds.</summary>
sealed record FaceFlat(RailFace Face, FoldEdge? Edge, ImmutableArray<Vec2> Near, ImmutableArray<Vec2> Far, bool NearFolds, bool FarFolds)
{
    /// <summary>Round the face: the near line out, the far line back.</summary>
    public ImmutableArray<Vec2> Outline { get; } = [.. Near, .. Far.Reverse()];

    public static FaceFlat? Of(RailForm form, RailFace face)
    {
        var edge = face is RailFace.UpperFlange or RailFace.UpperLip ? form.Upper : form.Lower;
        if (face == RailFace.Web)
            return new(face, null, Line(form.Lower, _ => 0), Line(form.Upper, _ => 0), true, form.Upper.Shape is not null);
        if (edge.Shape is not { } shape) return null;
        double Inner(double a) => shape.Allowance + shape.Flat(edge.FlangeAt(a));
        if (face is RailFace.LowerFlange or RailFace.UpperFlange) return new(face, edge, Line(edge, _ => shape.Allowance), Line(edge, Inner), true, shape.LipTurn != 0);
        return shape.LipTurn == 0 ? null : new(face, edge, Line(edge, a => Inner(a) + shape.LipAllowance), Line(edge, edge.DevelopedAt), true, false);
    }

    static ImmutableArray<Vec2> Line(FoldEdge edge, Func<double, double> flat) => RailOutline.Points(RailOutline.Beside(edge, flat, cut: true, []));

    /// <summary>Distance of an opening from the nearest fold, mm, by chords.</summary>
    public double FromFold(ReadOnlySpan<Vec2> opening) =>
        Math.Min(NearFolds ? Least(opening, Near) : double.PositiveInfinity, FarFolds ? Least(opening, Far) : double.PositiveInfinity);

    /// <summary>From the nearer end of the rail, mm.</summary>
    public double FromEnd(ReadOnlySpan<Vec2> opening) => Math.Min(Least(opening, [Near[0], Far[0]]), Least(opening, [Near[^1], Far[^1]]));

    public double FromFreeEdge(ReadOnlySpan<Vec2> opening) => FarFolds ? double.PositiveInfinity : Least(opening, Far);

    static double Least(ReadOnlySpan<Vec2> opening, ImmutableArray<Vec2> line)
    {
        var least = double.PositiveInfinity;
        foreach (var p in opening)
            for (var k = 1; k < line.Length; k++) least = Math.Min(least, Plane2.Distance(p, line[k - 1], line[k]));
        return least;
    }
}

/// <summary>A hole put in its place.</summary>
/// <param name="OnBlank">Round stays round: where the blank is not strained it comes true on the part.</param>
/// <param name="Stands">Its own frame (x along the rail, y across, z to the side seen on the blank) in space, at mid-thickness.</param>
/// <param name="Along">Along the edge of its face, mm; for the web along the base line.</param>
/// <param name="Flat">From the web's tangent line on the blank, mm; for the web its height over the lower one.</param>
/// <param name="Strain">Of the metal round it if the flange is worked in one piece with the web.</param>
public sealed record PlacedHole(RailHole Hole, Opening OnBlank, Motion3 Stands, double Along, double Flat, double Strain);
