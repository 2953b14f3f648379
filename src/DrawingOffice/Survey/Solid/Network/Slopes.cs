using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>Passes the slopes of a value with respect to places, directions, offsets and radii on to the unknowns behind them.</summary>
readonly ref struct Slopes(SolidLayout layout, ReadOnlySpan<double> x, Derivatives d)
{
    readonly ReadOnlySpan<double> _x = x;
    readonly Derivatives _d = d;

    public void Place(int feature, Vec3 rate)
    {
        if (_d.Idle) return;
        if (layout.IsCornered(feature))
        {
            var (a, b) = layout.Corners(feature);
            Place(a, rate / 2);
            Place(b, rate / 2);
            return;
        }
        Raw(layout.PlaceAt(feature), rate);
    }

    /// <summary>With respect to a direction of length 1: what lies along it counts for nothing.</summary>
    public void Direction(int feature, Vec3 rate)
    {
        if (_d.Idle) return;
        if (layout.IsCornered(feature))
        {
            var (a, b) = layout.Corners(feature);
            var v = layout.Place(b, _x) - layout.Place(a, _x);
            var swing = Square(rate, v) / v.Length;
            Place(a, -swing);
            Place(b, swing);
            return;
        }
        var at = layout.DirectionAt(feature);
        if (at < 0)
        {
            Direction(layout.On(feature), rate);
            return;
        }
        var u = SolidLayout.Read(at, _x);
        Raw(at, Square(rate, u) / u.Length);
    }

    public void Offset(int plane, double rate) => _d.Add(layout.First(plane) + 3, rate);

    /// <summary>share × radius of a hole or cylinder (or of the pin in it), 0 for a point; its slope is passed on times <paramref name="by"/>.</summary>
    public double Radius(int feature, double pin, double share, double by = 1)
    {
        if (layout.SizeOf(feature) is not (>= 0 and var size)) return 0;
        if (pin > 0) return share * pin / 2;
        _d.Add(size, share * by / 2);
        return share * _x[size] / 2;
    }

    public void Raw(int at, Vec3 rate)
    {
        _d.Add(at, rate.X);
        _d.Add(at + 1, rate.Y);
        _d.Add(at + 2, rate.Z);
    }

    public void One(int at, double rate) => _d.Add(at, rate);

    static Vec3 Square(Vec3 rate, Vec3 to)
    {
        var u = to.Unit;
        return rate - rate.Dot(u) * u;
    }
}
