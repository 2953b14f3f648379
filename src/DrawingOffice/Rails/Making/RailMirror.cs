using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>The other hand: everything seen in a mirror square to the rail's base line.</summary>
static class RailMirror
{
    public static Kit Of(Kit kit) => kit with
    {
        Pieces = [.. kit.Pieces.Select(Of)],
        Shape = kit.Shape is { } s ? Of(s) : null,
        Formers = [.. kit.Formers.Select(f => f with { Shape = Of(f.Shape), Templates = [.. f.Templates.Select(Of)] })],
    };

    static Vec2 Of(Vec2 p) => new(-p.X, p.Y);

    static Piece Of(Piece p) => p with
    {
        Outline = Of(p.Outline),
        Openings = [.. p.Openings.Select(Of)],
        Creases = [.. p.Creases.Select(c => c with { Line = [.. c.Line.Select(Of)] })],
        Witnesses = [.. p.Witnesses.Select(w => w with { Line = [.. w.Line.Select(Of)] })],
    };

    static Loop Of(Loop loop) => new Loop([.. loop.Corners.Select(c => new Corner(Of(c.At), -c.Bulge))]).Reversed();

    static Opening Of(Opening opening) => opening switch
    {
        RoundHole h => h with { At = Of(h.At) },
        Slot s => s with { At = Of(s.At), Turn = -s.Turn },
        CutOut c => c with { Outline = Of(c.Outline) },
        _ => throw new ArgumentOutOfRangeException(nameof(opening)),
    };

    static Body Of(Body body)
    {
        static Vec3 M(Vec3 p) => new(-p.X, p.Y, p.Z);
        return new([.. body.Facets.Select(f => new Facet([.. f.Loops.Select(l => l.Select(M).Reverse().ToImmutableArray())]))],
            [.. body.Rims.Select(r => r with { Centre = M(r.Centre), Normal = M(r.Normal) })]);
    }
}
