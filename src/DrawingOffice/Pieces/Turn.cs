using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Pieces;

/// <summary>A piece moved, and its other hand.</summary>
public static class Turn
{
    public static Piece Moved(this Piece piece, Pose2 pose) => piece with
    {
        Outline = piece.Outline.Moved(pose),
        Openings = [.. piece.Openings.Select(o => o.Moved(pose))],
        Creases = [.. piece.Creases.Select(c => c with { Line = [.. c.Line.Select(pose.Map)] })],
        Witnesses = [.. piece.Witnesses.Select(w => w with { Line = [.. w.Line.Select(pose.Map)] })],
        Strains = [.. piece.Strains.Select(s => s with { Edge = [.. s.Edge.Select(pose.Map)] })],
    };

    /// <summary>The other hand, as in a mirror: what folds up still folds up.</summary>
    public static Piece TurnedOver(this Piece piece) => piece with
    {
        Outline = Mirrored(piece.Outline),
        Openings = [.. piece.Openings.Select(Mirrored)],
        Creases = [.. piece.Creases.Select(c => c with { Line = Mirrored(c.Line) })],
        Witnesses = [.. piece.Witnesses.Select(w => w with { Line = Mirrored(w.Line) })],
        Strains = [.. piece.Strains.Select(s => s with { Edge = [.. Mirrored(s.Edge).Reverse()] })],
        Handed = false,
    };

    static Vec2 Mirrored(Vec2 p) => new(-p.X, p.Y);

    static ImmutableArray<Vec2> Mirrored(ImmutableArray<Vec2> line) => [.. line.Select(Mirrored)];

    static Loop Mirrored(Loop loop) => new Loop([.. loop.Corners.Select(c => new Corner(Mirrored(c.At), -c.Bulge))]).Reversed();

    static Opening Mirrored(Opening opening) => opening switch
    {
        RoundHole hole => hole with { At = Mirrored(hole.At) },
        Slot slot => slot with { At = Mirrored(slot.At), Turn = Math.PI - slot.Turn },
        CutOut cut => cut with { Outline = Mirrored(cut.Outline) },
        _ => new CutOut(opening.Id, Mirrored(opening.Edge)),
    };
}
