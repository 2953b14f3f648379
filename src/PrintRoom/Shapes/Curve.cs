using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Shapes;

/// <summary>One stretch of a curve: a cubic Bézier to <paramref name="End"/>, or straight, when the controls say nothing.</summary>
public readonly record struct Piece(Vec2 C1, Vec2 C2, Vec2 End, bool Straight)
{
    public static Piece To(Vec2 end) => new(end, end, end, true);
}

/// <summary>The path of a pen, mm: straight and cubic pieces from <paramref name="Start"/>, joined to it again when closed.</summary>
public sealed record Curve(Vec2 Start, ImmutableArray<Piece> Pieces, bool Closed = false)
{
    public static Curve Straight(ImmutableArray<Vec2> points, bool closed = false) =>
        new(points[0], [.. points.Skip(1).Select(Piece.To)], closed);

    /// <summary>
    /// A stretch of an ellipse, half-axes <paramref name="a"/> and <paramref name="b"/>, the first turned by <paramref name="turn"/>.
    /// Pieces of at most an eighth of a turn: worst radial error 4.3e-6 of the longer half-axis.
    /// </summary>
    public static Curve Ellipse(Vec2 centre, double a, double b, double turn, double start, double sweep)
    {
        var count = Math.Max(1, (int)Math.Ceiling(Math.Abs(sweep) / (Math.PI / 4) - 1e-9));
        var step = sweep / count;
        var reach = 4.0 / 3 * Math.Tan(step / 4);
        Vec2 Place(double x, double y) => centre + new Vec2(a * x, b * y).Turned(turn);
        var pieces = Enumerable.Range(0, count).Select(i =>
        {
            var (s0, c0) = Math.SinCos(start + i * step);
            var (s1, c1) = Math.SinCos(start + (i + 1) * step);
            return new Piece(Place(c0 - reach * s0, s0 + reach * c0), Place(c1 + reach * s1, s1 - reach * c1), Place(c1, s1), false);
        });
        var (sin, cos) = Math.SinCos(start);
        return new(Place(cos, sin), [.. pieces], Math.Abs(sweep) >= 2 * Math.PI - 1e-12);
    }

    /// <param name="map">Must keep straight lines straight (turn, shift, stretch).</param>
    public Curve Map(Func<Vec2, Vec2> map) =>
        new(map(Start), [.. Pieces.Select(p => new Piece(map(p.C1), map(p.C2), map(p.End), p.Straight))], Closed);

    /// <summary>Corners of a polyline nowhere further than <paramref name="tolerance"/> mm from the curve; a closed one ends where it began.</summary>
    public ImmutableArray<Vec2> Points(double tolerance)
    {
        var points = ImmutableArray.CreateBuilder<Vec2>();
        points.Add(Start);
        foreach (var piece in Pieces)
            if (piece.Straight) points.Add(piece.End);
            else Flatten(points[^1], piece, tolerance, points);
        if (Closed && points[^1] != Start) points.Add(Start);
        return points.ToImmutable();
    }

    /// <summary>Equal steps of the parameter; a chord over 1/n strays at most max|P″|/(8n²).</summary>
    static void Flatten(Vec2 from, Piece piece, double tolerance, ImmutableArray<Vec2>.Builder points)
    {
        var bend = 6 * Math.Max((from - 2 * piece.C1 + piece.C2).Length, (piece.C1 - 2 * piece.C2 + piece.End).Length);
        var count = Math.Clamp((int)Math.Ceiling(Math.Sqrt(bend / (8 * tolerance))), 1, 1000);
        for (var i = 1; i < count; i++)
        {
            var t = (double)i / count;
            var u = 1 - t;
            points.Add(u * u * u * from + 3 * u * u * t * piece.C1 + 3 * u * t * t * piece.C2 + t * t * t * piece.End);
        }
        points.Add(piece.End);
    }
}
