using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.Bench;

/// <summary>
/// A box with round corners to a tilted round, about 400 triangles, drawn tight, laid flat and folded up again. The alternative gives the same
/// skin to the same error without knowing the curves: even points on each rim, as close as its tightest curve asks, and for every edge
/// of the first each point of the second tried; it only lays flat.
/// </summary>
public class TransitionBench
{
    const double Error = 0.0075;

    static readonly End Box = new(new BoxForm(120, 80, 12), Motion3.Identity);
    static readonly End Round = new(new RoundForm(76), Motion3.Shift(new(25, 0, 110)).After(Motion3.About(Vec3.Zero, new(0, 1, 0), 0.2)));
    readonly AskedTransition _asked = new("duct", 0.9, Box, Round) { Error = Error };
    int _first;
    int _second;

    [GlobalSetup]
    public void Count()
    {
        var made = Tight(_asked);
        var skin = SkinKit.Drawn(_asked).Value;
        _first = (int)Math.Ceiling(skin.First.Length / Step(12.45, made.Chord));
        _second = (int)Math.Ceiling(skin.Second.Length / Step(38.45, made.Chord));
        Console.WriteLine($"ours {made.Strip.Triangles} triangles, even points {_first + _second}");
    }

    static double Step(double radius, double chord) => 2 * radius * Math.Acos(1 - chord / radius);

    [Benchmark]
    public double Ours()
    {
        var made = Tight(_asked);
        return Flatten.Error(made.Strip, Flatten.Of(made.Strip));
    }

    [Benchmark(Baseline = true)]
    public FlatStrip EvenPointsAllTried()
    {
        var (first, second) = (RimOf.End(Box, "first", 0.45).Value, RimOf.End(Round, "second", 0.45).Value);
        return Flatten.Of(Plain(Even(first, _first), first.Frame.Z, Even(second, _second)));
    }

    static Triangulated Tight(AskedTransition asked)
    {
        var skin = SkinKit.Drawn(asked).Value;
        return Triangulate.Of(skin, SkinSeam.From(skin, SkinSeam.Angle(skin, asked.Seam)), asked.Error).Value;
    }

    static Vec3[] Even(Rim rim, int n)
    {
        var (points, step, side, from) = (new Vec3[n], rim.Length / n, 0, 0.0);
        for (var k = 0; k < n; k++)
        {
            while (k * step - from > rim.Sides[side].Length && side + 1 < rim.Count) from += rim.Sides[side++].Length;
            points[k] = rim.Sides[side].At((k * step - from) / rim.Sides[side].Length);
        }
        return points;
    }

    static Strip Plain(Vec3[] a, Vec3 up, Vec3[] b)
    {
        var (n, m) = (a.Length, b.Length);
        var partner = new int[n];
        for (var i = 0; i < n; i++) partner[i] = Least(a[i], a[(i + 1) % n], up, b);
        var (rungs, j0) = (new List<Rung>(), partner[0]);
        rungs.Add(new(0, 0, true));
        for (int i = 0, j = 0; i < n || j < m;)
        {
            if (i < n && (j == m || partner[i] == (j0 + j) % m)) i++;
            else j++;
            rungs.Add(new(i, j, true));
        }
        return new([.. Enumerable.Range(0, n + 1).Select(i => a[i % n])], [.. Enumerable.Range(0, m + 1).Select(j => b[(j0 + j) % m])], [.. rungs]);
    }

    static int Least(Vec3 p, Vec3 q, Vec3 up, Vec3[] other)
    {
        var inward = up.Cross(q - p);
        var (best, at) = (double.PositiveInfinity, 0);
        for (var k = 0; k < other.Length; k++)
        {
            var d = other[k] - p;
            var lean = d.Dot(inward) / d.Dot(up);
            if (lean < best) (best, at) = (lean, k);
        }
        return at;
    }
}
