using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Pictorial;

/// <summary>A line in space: points joined in order, mm.</summary>
/// <param name="Rim">The circle that the points follow by chords; drawn as a circle or an ellipse where it is seen whole.</param>
public sealed record Wire(ImmutableArray<Vec3> Points, string Layer, Stroke Stroke = Stroke.Outline, Tone Tone = Tone.Ink, Rim? Rim = null)
{
    /// <summary>Chords of a circle: the middle of one lies 0.1 % of the radius inside it.</summary>
    const int Chords = 72;

    public static Wire Line(Vec3 a, Vec3 b, string layer, Stroke stroke = Stroke.Outline, Tone tone = Tone.Ink) => new([a, b], layer, stroke, tone);

    public static Wire Circle(Rim rim, string layer, Stroke stroke = Stroke.Outline, Tone tone = Tone.Ink)
    {
        var across = rim.Normal.Cross(Math.Abs(rim.Normal.Z) < 0.9 ? new(0, 0, 1) : new(1, 0, 0)).Unit;
        var other = rim.Normal.Cross(across);
        return new([.. Enumerable.Range(0, Chords + 1).Select(i => Math.SinCos(2 * Math.PI * i / Chords)).Select(t => rim.Centre + (across * t.Cos + other * t.Sin) * rim.Radius)],
            layer, stroke, tone, rim);
    }
}

/// <summary>A way of looking along parallel lines, by the two directions of the paper in space (length 1, square to each other).</summary>
/// <param name="Scale">mm on paper for a mm across the line of sight.</param>
public sealed record Sight(Vec3 Right, Vec3 Up, double Scale = 1)
{
    /// <summary>Along y, z upright.</summary>
    public static Sight Front { get; } = new(new(1, 0, 0), new(0, 0, 1));

    /// <summary>From above.</summary>
    public static Sight Above { get; } = new(new(1, 0, 0), new(0, 1, 0));

    public static Sight FromLeft { get; } = new(new(0, -1, 0), new(0, 0, 1));

    public static Sight FromRight { get; } = new(new(0, 1, 0), new(0, 0, 1));

    /// <summary>Of a body turned about its upright and tipped towards the eye, radians; nothing turned is the front.</summary>
    public static Sight Turned(double turn, double tip)
    {
        var ((s, c), (st, ct)) = (Math.SinCos(turn), Math.SinCos(tip));
        return new(new(c, s, 0), new(-st * s, st * c, ct));
    }

    /// <summary>Isometric (ISO 5456-3), seen from the right front.</summary>
    public static Sight Isometric { get; } = Turned(Math.PI / 4, Math.Asin(Math.Sqrt(1.0 / 3)));

    /// <summary>Towards the eye.</summary>
    public Vec3 Near => Right.Cross(Up);

    /// <summary>On the paper, mm.</summary>
    public Vec2 At(Vec3 p) => new(Right.Dot(p) * Scale, Up.Dot(p) * Scale);

    internal Vec3 Eye(Vec3 p) => new(Right.Dot(p) * Scale, Up.Dot(p) * Scale, Near.Dot(p) * Scale);
}

/// <summary>Draws lines in space with what thin flat sheets hide of them dashed.</summary>
public static class WireDrawing
{
    /// <summary>Circles that turn from the eye by more than this (cosine) are seen as a line; those that turn less than its square as a circle.</summary>
    const double EdgeOn = 1e-3;

    /// <param name="sheets">Opaque from both sides, without thickness.</param>
    /// <param name="lift">What lies behind a sheet by less counts as lying on it, mm: measured corners lie off their face by their ±.</param>
    public static ImmutableArray<Mark> Draw(IEnumerable<Wire> wires, IEnumerable<Facet> sheets, Sight sight, double lift = 0)
    {
        var screens = sheets.Select(f => new Facet([.. f.Loops.Select(l => l.Select(sight.Eye).ToImmutableArray())])).ToArray();
        screens = [.. screens, .. screens.Select(f => new Facet([.. f.Loops.Select(l => l.Reverse().ToImmutableArray())]))];
        var hide = new HiddenLines(screens, [.. screens.Select(s => s.Normal)]);
        return [.. wires.SelectMany(w => Marks(w, hide, sight, lift * sight.Scale))];
    }

    static IEnumerable<Mark> Marks(Wire wire, HiddenLines hide, Sight sight, double lift)
    {
        var (seen, covered, whole) = (new LineWork(), new LineWork(), true);
        var rise = new Vec3(0, 0, lift);
        for (var i = 1; i < wire.Points.Length; i++)
        {
            var (a, b) = (sight.Eye(wire.Points[i - 1]), sight.Eye(wire.Points[i]));
            var at = 0.0;
            foreach (var (from, to) in hide.Seen(a + rise, b + rise))
            {
                Put(covered, a, b, at, from);
                Put(seen, a, b, from, to);
                at = to;
            }
            Put(covered, a, b, at, 1);
            whole &= at == 1 && !covered.Holds(0);
        }
        if (whole && wire.Rim is { } rim) return [Round(wire, rim, sight)];
        var dashed = wire.Stroke == Stroke.Outline ? Stroke.Hidden : wire.Stroke;
        return covered.Marks(Vec2.Zero, dashed == Stroke.Hidden ? Layers.Hidden : wire.Layer, dashed, _ => false)
            .Concat(seen.Marks(Vec2.Zero, wire.Layer, wire.Stroke, _ => false)).Select(m => m with { Tone = wire.Tone });
    }

    static void Put(LineWork lines, Vec3 a, Vec3 b, double from, double to)
    {
        if (to - from < 1e-9) return;
        var (p, q) = (a + (b - a) * from, a + (b - a) * to);
        lines.Add(new(p.X, p.Y), new(q.X, q.Y), 0);
    }

    static Mark Round(Wire wire, Rim rim, Sight sight)
    {
        var (centre, radius, facing) = (sight.At(rim.Centre), rim.Radius * sight.Scale, Math.Abs(sight.Near.Dot(rim.Normal)));
        var normal = new Vec2(sight.Right.Dot(rim.Normal), sight.Up.Dot(rim.Normal));
        if (1 - facing < EdgeOn * EdgeOn) return new CircleMark(centre, radius, wire.Layer, wire.Stroke, wire.Tone);
        var across = normal.Unit.Left;
        return facing < EdgeOn
            ? new LineMark(centre - across * radius, centre + across * radius, wire.Layer, wire.Stroke, wire.Tone)
            : new EllipseMark(centre, radius, radius * facing, across.Angle, wire.Layer, wire.Stroke, wire.Tone);
    }
}
