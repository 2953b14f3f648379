using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>Branch and main for a picture: the main lies along x, z points towards the branch. The main is shown without its hole.</summary>
static class SaddleBody
{
    public static Body Of(AskedSaddle asked, double inner, double outer, Func<double, double> cut)
    {
        var (s, c) = Math.SinCos(asked.Angle);
        var branch = new Motion3(new(s, 0, -c), new(0, 1, 0), new(c, 0, s), new(0, asked.Offset, 0));
        Vec3[] Ring(double radius, Func<double, double> height) => Tubing.Ring(t => branch.Map(Vec2.Polar(t, radius), height(t)));
        var tube = Tubing.Of([Ring(outer, cut), Ring(outer, _ => asked.Length)], [Ring(inner, cut), Ring(inner, _ => asked.Length)]);
        var (from, to) = (HoleTemplate.At(asked, outer, Math.PI).X - 2 * outer, HoleTemplate.At(asked, outer, 0).X + 2 * outer);
        return new([.. tube, .. asked.Main.Radius is { } main ? Main(main, asked.Main.Wall, from, to) : Plate(asked, outer, from, to)], []);
    }

    static IEnumerable<Facet> Main(double radius, double wall, double from, double to)
    {
        // A bore of nothing would leave facets of nothing.
        var bore = wall > 0 ? radius - wall : radius * 0.98;
        Vec3[] Ring(double r, double x) => Tubing.Ring(t => new(x, r * Math.Cos(t), r * Math.Sin(t)));
        return Tubing.Of([Ring(radius, from), Ring(radius, to)], [Ring(bore, from), Ring(bore, to)]);
    }

    static IEnumerable<Facet> Plate(AskedSaddle asked, double outer, double from, double to)
    {
        var thick = Math.Max(asked.Main.Wall, 0.5);
        var (a, b) = (asked.Offset - 3 * outer, asked.Offset + 3 * outer);
        Vec3[] top = [new(from, a, 0), new(to, a, 0), new(to, b, 0), new(from, b, 0)];
        var down = new Vec3(0, 0, -thick);
        yield return Facet.Of(top);
        yield return Facet.Of(top[3] + down, top[2] + down, top[1] + down, top[0] + down);
        for (var k = 0; k < 4; k++)
            yield return Facet.Of(top[k] + down, top[(k + 1) % 4] + down, top[(k + 1) % 4], top[k]);
    }
}
