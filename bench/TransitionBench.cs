using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.Bench;

/// <summary>
/// A box to tilted round of about 400 triangles drawn tight, triangulated, laid flat and folded up again; the alternative joins even shares of
/// both rims, as many as come as near the same tight skin, and only lays them flat.
/// </summary>
public class TransitionBench
{
    const double Error = 0.004;
    const int Even = 24_000;

    static readonly End Box = new(new BoxForm(120, 80, 12), Motion3.Identity);
    static readonly End Round = new(new RoundForm(76), Motion3.Shift(new(25, 0, 110)).After(Motion3.About(Vec3.Zero, new(0, 1, 0), 0.2)));
    readonly AskedTransition _asked = new("duct", 0.9, Box, Round) { Error = Error };

    public static int Triangles() => Tight(new("duct", 0.9, Box, Round) { Error = Error }).Strip.Triangles;

    [Benchmark]
    public double Ours()
    {
        var made = Tight(_asked);
        var flat = Flatten.Of(made.Strip);
        return Flatten.Error(made.Strip, flat);
    }

    [Benchmark(Baseline = true)]
    public FlatStrip EvenShares() => Flatten.Of(Evenly(Even));

    static Triangulated Tight(AskedTransition asked)
    {
        var skin = SkinKit.Drawn(asked).Value;
        return Triangulate.Of(skin, SkinSeam.From(skin, SkinSeam.Angle(skin, asked.Seam)), asked.Error).Value;
    }

    /// <summary>Both rims in the same number of even shares from the same side, joined point to point.</summary>
    static Strip Evenly(int shares)
    {
        var (first, second) = (RimOf.End(Box, "first", 0.45).Value, RimOf.End(Round, "second", 0.45).Value);
        var (a, b) = (new Vec3[shares + 1], new Vec3[shares + 1]);
        var rungs = new List<Rung> { new(0, 0, true) };
        for (var k = 0; k <= shares; k++)
        {
            a[k] = first.At(first.Count * (double)k / shares);
            b[k] = second.At((double)k / shares);
            if (k == 0) continue;
            rungs.Add(new(k, k - 1, false));
            rungs.Add(new(k, k, true));
        }
        return new([.. a], [.. b], [.. rungs]);
    }
}
