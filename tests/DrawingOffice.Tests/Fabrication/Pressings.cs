using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Fabrication;

/// <summary>Pressings to try things on.</summary>
static class Pressings
{
    public static Pressing Of(double thickness, (string Name, Vec3 At)[] points, params (string Name, string Ring)[] faces) =>
        new("tried", thickness, [.. points.Select(p => new PressingPoint(p.Name, p.At, Vec3.Zero))], [.. faces.Select(f => new PressingFace(f.Name, [.. f.Ring.Split(' ')]))]);

    /// <summary>A flat-bottomed tray with n walls leaning outwards by a slope, with lips turned out from the tops of some walls.</summary>
    public static Pressing Tray(int sides, double radius, double height, double lean, double thickness, bool[] walls, bool[] lips)
    {
        var points = new List<(string, Vec3)>();
        Vec3 At(int i, double r, double z) => new(r * Math.Cos(2 * Math.PI * i / sides), r * Math.Sin(2 * Math.PI * i / sides), z);
        for (var i = 0; i < sides; i++)
        {
            points.Add(($"B{i}", At(i, radius, 0)));
            points.Add(($"T{i}", At(i, radius + lean, height)));
        }
        var faces = new List<(string, string)> { ("base", string.Join(' ', Enumerable.Range(0, sides).Select(i => $"B{i}"))) };
        for (var i = 0; i < sides; i++)
        {
            var k = (i + 1) % sides;
            if (!walls[i]) continue;
            faces.Add(($"wall{i}", $"B{i} B{k} T{k} T{i}"));
            if (!lips[i]) continue;
            // A lip ends short of the corners, so that neighbours do not meet.
            var (a, b) = (At(i, radius + lean, height), At(k, radius + lean, height));
            var outwards = new Vec3(a.X + b.X, a.Y + b.Y, 0).Unit;
            points.Add(($"L{i}a", a + (b - a) * 0.1 + outwards * 14));
            points.Add(($"L{i}b", b + (a - b) * 0.1 + outwards * 14));
            faces.Add(($"lip{i}", $"T{i} T{k} L{i}b L{i}a"));
        }
        return Of(thickness, [.. points], [.. faces]) with { InsideRadius = thickness };
    }

    public static Pressing RandomTray(Chance chance)
    {
        var sides = 3 + chance.Below(3);
        var walls = Enumerable.Range(0, sides).Select(_ => chance.Below(5) > 0).ToArray();
        walls[0] = true;
        var lips = Enumerable.Range(0, sides).Select(_ => chance.Below(3) == 0).ToArray();
        return Tray(sides, chance.Uniform(60, 140), chance.Uniform(20, 70), chance.Uniform(-8, 25), chance.Uniform(0.8, 1.6), walls, lips);
    }

    public static ImmutableArray<PressingPoint> Moved(ImmutableArray<PressingPoint> points, int index, Vec3 by) => points.SetItem(index, points[index] with { At = points[index].At + by });
}
