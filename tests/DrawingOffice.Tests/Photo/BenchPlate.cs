using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Photo;

/// <summary>A plate of six corners and five holes on the sheet, pictured from five sides by cameras whose curves of light stray by 8 %.</summary>
static class BenchPlate
{
    public static ImmutableArray<Vec2> Corners { get; } = [new(-60, -90), new(55, -90), new(70, -40), new(50, 80), new(-20, 95), new(-60, 40)];

    public static ImmutableArray<(Vec2 At, double Diameter)> Holes { get; } = [(new(-30, -60), 12), (new(30, -60), 6.5), (new(0, 0), 40), (new(30, 60), 5), (new(-35, 30), 8)];

    /// <summary>Slant, bearing, roll (degrees), height of the plate (mm), bend of the lens.</summary>
    public static readonly (double Slant, double Bearing, double Roll, double Height, double K1)[] Views =
        [(0, 0, 3, 0, 0), (15, 60, 100, 2, 0.05), (30, 200, 10, 2, 0), (45, 330, 200, 0, -0.05), (55, 90, 5, 1, 0)];

    static readonly Lazy<float[]>[] s_clean = [.. Views.Select((v, k) => new Lazy<float[]>(() => Rendered.Clean(new Scene(Target.A4, new Plate(Corners, Holes, 0.25, v.Height)) { Shade = 0.6 }, Camera(k))))];

    public static Pinhole Camera(int view)
    {
        var v = Views[view];
        return new(1600, 1200, 1250, v.Slant, v.Bearing, v.Roll, v.Slant > 40 ? 520 : 460, default, v.K1);
    }

    public static Raster Picture(int view, ulong seed)
    {
        var chance = new Chance(1000 * (ulong)view + seed);
        var curve = 1 + 0.08 * chance.Normal();
        return Rendered.Picture(s_clean[view].Value, 1600, 1200, 2, chance, 1.1, curve);
    }

    public static TruePhoto Photo(int view, ulong seed)
    {
        var height = Views[view].Height;
        return MakeTrue.Of(Picture(view, seed), TrueTests.Measured with { Height = new(height, height > 0 ? 0.02 : 0) }).Value;
    }
}

/// <summary>Errors over their stated standard deviations.</summary>
sealed class Score
{
    readonly List<double> _ratios = [];

    public void Add(double error, double std) => _ratios.Add(error / std);

    public int Count => _ratios.Count;

    public double Rms => Math.Sqrt(_ratios.Sum(r => r * r) / _ratios.Count);

    /// <summary>Within two standard deviations.</summary>
    public double Covered => _ratios.Count(r => Math.Abs(r) <= 2) / (double)_ratios.Count;

    /// <summary>0.954 is wanted; four binomial standard deviations less is the least that chance allows.</summary>
    public void Check(double leastRms = 0.5, double mostRms = 1.3)
    {
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{Count} errors: rms {Rms:0.00} of the stated ±, {100 * Covered:0.0} % within two"));
        Assert.InRange(Rms, leastRms, mostRms);
        Assert.InRange(Covered, 0.954 - 4 * Math.Sqrt(0.954 * 0.046 / Count), 1);
    }
}
