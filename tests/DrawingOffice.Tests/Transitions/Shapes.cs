using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Tests.Transitions;

/// <summary>Shapes and measures that several tests use.</summary>
static class Shapes
{
    public static End At(EndForm form, double x, double y, double z, double tiltX = 0, double tiltY = 0, double turn = 0)
    {
        var rad = Math.PI / 180;
        var turned = Motion3.About(Vec3.Zero, new(0, 0, 1), turn * rad);
        var tilted = Motion3.About(Vec3.Zero, new(0, 1, 0), tiltY * rad).After(Motion3.About(Vec3.Zero, new(1, 0, 0), tiltX * rad).After(turned));
        return new(form, Motion3.Shift(new(x, y, z)).After(tilted));
    }

    public static AskedTransition Asked(End first, End second, double error = 0.1) => new("shape", 1, first, second) { Sizes = Surface.Mean, Error = error };

    public static (Skin Skin, Triangulated Made) Skin(End first, End second, double error = 0.1)
    {
        var skin = SkinKit.Drawn(Asked(first, second)).Value;
        return (skin, Triangulate.Of(skin, skin.Panels, error).Value);
    }

    /// <summary>Corners of every triangle, first edge, first edge or second, second.</summary>
    public static IEnumerable<(Vec3 A, Vec3 B, Vec3 C)> Triangles(Strip s)
    {
        for (var i = 0; i + 1 < s.Rungs.Length; i++)
        {
            var (r, n) = (s.Rungs[i], s.Rungs[i + 1]);
            yield return (s.First[r.First], n.First > r.First ? s.First[n.First] : s.Second[n.Second], s.Second[r.Second]);
        }
    }

    public static double Area(Strip s) => Triangles(s).Sum(t => (t.B - t.A).Cross(t.C - t.A).Length / 2);

    /// <summary>Enclosed by the strip once round and its two flat ends, mm³ (Gauss).</summary>
    public static double Volume(Strip s)
    {
        var six = Triangles(s).Sum(t => t.A.Dot(t.B.Cross(t.C)));
        for (var i = 1; i + 1 < s.First.Length; i++) six += s.First[0].Dot(s.First[i + 1].Cross(s.First[i]));
        for (var i = 1; i + 1 < s.Second.Length; i++) six += s.Second[0].Dot(s.Second[i].Cross(s.Second[i + 1]));
        return six / 6;
    }

    public static double Flat(ImmutableArray<Vec3> round)
    {
        var sum = Vec3.Zero;
        for (var i = 1; i + 1 < round.Length; i++) sum += (round[i] - round[0]).Cross(round[i + 1] - round[0]);
        return sum.Length / 2;
    }

    public static End RandomEnd(Chance chance, double z)
    {
        double Between(double low, double high) => low + (high - low) * chance.Uniform();
        EndForm form = (int)(4 * chance.Uniform()) switch
        {
            0 => new RoundForm(Between(40, 120)),
            1 => new OvalForm(Between(40, 120), Between(40, 120)),
            2 => new BoxForm(Between(50, 120), Between(50, 120), chance.Uniform() < 0.5 ? 0 : Between(2, 20)),
            _ => Polygon((int)Between(3, 9), Between(30, 60), Between(0, 6)),
        };
        return At(form, z == 0 ? 0 : Between(-40, 40), z == 0 ? 0 : Between(-40, 40), z, z == 0 ? 0 : Between(-20, 20), z == 0 ? 0 : Between(-20, 20), Between(0, 360));
    }

    public static PolygonForm Polygon(int sides, double radius, double from = 0) => new([.. Enumerable.Range(0, sides).Select(k => Vec2.Polar(from + Math.Tau * k / sides, radius))]);
}
