using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;

namespace WitnessMark.PrintRoom.Shapes;

/// <summary>An upright rectangle, mm. Edges belong to it.</summary>
public readonly record struct Box(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    public bool Holds(Vec2 p) => p.X >= Left && p.X <= Right && p.Y >= Bottom && p.Y <= Top;

    public bool Holds(Box o) => o.Left >= Left && o.Right <= Right && o.Bottom >= Bottom && o.Top <= Top;

    public bool Meets(Box o) => o.Left <= Right && o.Right >= Left && o.Bottom <= Top && o.Top >= Bottom;

    public Box Grown(double by) => new(Left - by, Bottom - by, Right + by, Top + by);

    public Box With(Box o) => new(Math.Min(Left, o.Left), Math.Min(Bottom, o.Bottom), Math.Max(Right, o.Right), Math.Max(Top, o.Top));

    /// <summary>The smallest box round the points; at least one must be given.</summary>
    public static Box Round(IEnumerable<Vec2> points)
    {
        var box = new Box(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);
        foreach (var p in points)
            box = new(Math.Min(box.Left, p.X), Math.Min(box.Bottom, p.Y), Math.Max(box.Right, p.X), Math.Max(box.Top, p.Y));
        return box;
    }

    /// <summary>Where a mark lies, without the width of its line; lettering with its pen. Nothing for an empty path or text.</summary>
    public static Box? Of(Mark mark) => mark switch
    {
        LineMark m => Round([m.A, m.B]),
        CircleMark m => Round([m.Centre]).Grown(m.Radius),
        ArcMark m => Round(Extremes(m)),
        EllipseMark m => Of(m),
        PathMark m => m.Points.IsDefaultOrEmpty ? null : Round(m.Points),
        TextMark m => Lettering.Bounds(m),
        _ => throw new ArgumentException($"A mark of a kind unknown to the print room: {mark.GetType().Name}"),
    };

    static IEnumerable<Vec2> Extremes(ArcMark m)
    {
        yield return m.Centre + Vec2.Polar(m.Start, m.Radius);
        yield return m.Centre + Vec2.Polar(m.Start + m.Sweep, m.Radius);
        for (var quarter = 0; quarter < 4; quarter++)
            if (Arcs.Passes(m, quarter * Math.PI / 2))
                yield return m.Centre + Vec2.Polar(quarter * Math.PI / 2, m.Radius);
    }

    static Box Of(EllipseMark m)
    {
        var (s, c) = Math.SinCos(m.Turn);
        var x = double.Hypot(m.HalfA * c, m.HalfB * s);
        var y = double.Hypot(m.HalfA * s, m.HalfB * c);
        return new(m.Centre.X - x, m.Centre.Y - y, m.Centre.X + x, m.Centre.Y + y);
    }
}
