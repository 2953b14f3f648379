using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>Area, first and second moments of a flat shape about the origin: ∫1, ∫x, ∫y, ∫x², ∫y², ∫xy; mm² to mm⁴.</summary>
public readonly record struct AreaMoments(double Area, double X, double Y, double XX, double YY, double XY)
{
    public Vec2 Centroid => new(X / Area, Y / Area);

    /// <summary>Of the inside of an outline with straight and circular sides, positive whichever way it runs; by Green's theorem, to rounding.</summary>
    public static AreaMoments Of(Loop loop)
    {
        // About the first corner: a far-off outline loses no digits.
        var origin = loop.Start(0);
        var sum = default(AreaMoments);
        for (var i = 0; i < loop.Count; i++) sum += OfSide(new(loop.Start(i) - origin, loop.End(i) - origin, loop.Corners[i].Bulge));
        return (sum.Area < 0 ? -1.0 * sum : sum).Moved(origin);
    }

    static AreaMoments OfSide(Side side)
    {
        double Sum(Func<Vec2, Vec2, double> f) => Gauss.Sum(side.Sweep, s => f(side.At(s), side.Pace(s)));
        return new(side.TwiceSwept(Vec2.Zero) / 2, Sum((p, d) => p.X * p.X * d.Y / 2), Sum((p, d) => -p.Y * p.Y * d.X / 2),
            Sum((p, d) => p.X * p.X * p.X * d.Y / 3), Sum((p, d) => -p.Y * p.Y * p.Y * d.X / 3), Sum((p, d) => p.X * p.X * p.Y * d.Y / 2));
    }

    /// <summary>The same shape shifted.</summary>
    public AreaMoments Moved(Vec2 by) => new(Area, X + by.X * Area, Y + by.Y * Area,
        XX + 2 * by.X * X + by.X * by.X * Area, YY + 2 * by.Y * Y + by.Y * by.Y * Area, XY + by.X * Y + by.Y * X + by.X * by.Y * Area);

    public static AreaMoments operator +(AreaMoments a, AreaMoments b) => new(a.Area + b.Area, a.X + b.X, a.Y + b.Y, a.XX + b.XX, a.YY + b.YY, a.XY + b.XY);

    public static AreaMoments operator -(AreaMoments a, AreaMoments b) => a + -1.0 * b;

    public static AreaMoments operator *(double k, AreaMoments a) => new(k * a.Area, k * a.X, k * a.Y, k * a.XX, k * a.YY, k * a.XY);
}
