using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>An upright rectangle, mm.</summary>
public readonly record struct Box(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    public Vec2 Middle => new((Left + Right) / 2, (Bottom + Top) / 2);

    /// <summary>Holds nothing; the union with anything is that thing.</summary>
    public static Box Nothing => new(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    public static Box Round(IEnumerable<Vec2> points) => points.Aggregate(Nothing, (box, p) => box.With(p));

    public Box With(Vec2 p) => new(Math.Min(Left, p.X), Math.Min(Bottom, p.Y), Math.Max(Right, p.X), Math.Max(Top, p.Y));

    public Box With(Box o) => new(Math.Min(Left, o.Left), Math.Min(Bottom, o.Bottom), Math.Max(Right, o.Right), Math.Max(Top, o.Top));

    /// <param name="by">Outwards on every side, mm.</param>
    public Box Grown(double by) => new(Left - by, Bottom - by, Right + by, Top + by);

    public Box Moved(Vec2 by) => new(Left + by.X, Bottom + by.Y, Right + by.X, Top + by.Y);

    public bool Overlaps(Box o) => Left < o.Right && o.Left < Right && Bottom < o.Top && o.Bottom < Top;

    public bool Holds(Box o) => o.Left >= Left && o.Right <= Right && o.Bottom >= Bottom && o.Top <= Top;

    /// <summary>Whether the straight line from a to b enters the rectangle (Liang and Barsky's clipping).</summary>
    public bool Meets(Vec2 a, Vec2 b)
    {
        double enter = 0, leave = 1;
        var d = b - a;
        return Clip(-d.X, a.X - Left) && Clip(d.X, Right - a.X) && Clip(-d.Y, a.Y - Bottom) && Clip(d.Y, Top - a.Y) && enter < leave;

        bool Clip(double slope, double room)
        {
            if (slope == 0) return room > 0;
            if (slope < 0) enter = Math.Max(enter, room / slope);
            else leave = Math.Min(leave, room / slope);
            return true;
        }
    }
}
