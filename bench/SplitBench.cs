using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.Bench;

/// <summary>
/// Split of a bracket of 31 faces and 40 joints, whole and with a sheet too small for it. The alternatives: every set of folds tried one after
/// another, which only a bracket of 6 faces allows, beside ours on the same; and the plain spanning tree of most saving, which asks no tool.
/// </summary>
public class SplitBench
{
    static readonly BendMethod Method = new NeutralAxis(0.42);
    readonly FaceModel _large = FaceModel.Of(Bracket(10, true)).Value;
    readonly FaceModel _small = FaceModel.Of(Bracket(5, false)).Value;
    static readonly SheetShop Tight = SheetShop.Usual with { SheetLength = 420, SheetWidth = 420 };

    [Benchmark]
    public double Large() => Splitter.Find(_large, SheetShop.Usual, SplitWork.Usual, Method).Value.Choices[0].Work;

    [Benchmark]
    public double LargeOnASmallSheet() => Splitter.Find(_large, Tight, SplitWork.Usual, Method).Value.Choices[0].Work;

    [Benchmark]
    public double Small() => Splitter.Find(_small, SheetShop.Usual, SplitWork.Usual, Method).Value.Choices[0].Work;

    [Benchmark(Baseline = true)]
    public double SmallByTryingAll()
    {
        var best = double.PositiveInfinity;
        var forest = new SplitSearch(_small, SheetShop.Usual, SplitWork.Usual, Method).Forest;
        for (UInt128 set = 0; set < UInt128.One << _small.Joints.Length; set++)
        {
            if (forest.Best(set, ~UInt128.Zero) is not { } whole) continue;
            if (forest.Parts(set).All(p => Foldable.Try(_small, p.Faces, Forest.List(p.Folds), SheetShop.Usual, Method).Piece is not null)) best = Math.Min(best, -whole.Saved);
        }
        return best;
    }

    [Benchmark]
    public double LargePlainTree() => new SplitSearch(_large, SheetShop.Usual, SplitWork.Usual, Method).Forest.Best(0, 0)!.Value.Saved;

    /// <summary>A tray of n walls; each with a lip out and a return down when it has lips.</summary>
    static Pressing Bracket(int sides, bool lips)
    {
        var (points, faces) = (new List<PressingPoint>(), new List<PressingFace>());
        void Add(string name, Vec3 at) => points.Add(new(name, at, Vec3.Zero));
        Vec3 At(int i, double r, double z) => new(r * Math.Cos(2 * Math.PI * i / sides), r * Math.Sin(2 * Math.PI * i / sides), z);
        faces.Add(new("base", [.. Enumerable.Range(0, sides).Select(i => $"B{i}")]));
        for (var i = 0; i < sides; i++)
        {
            Add($"B{i}", At(i, 150, 0));
            Add($"T{i}", At(i, 160, 45));
        }
        for (var i = 0; i < sides; i++)
        {
            var k = (i + 1) % sides;
            faces.Add(new($"wall{i}", [$"B{i}", $"B{k}", $"T{k}", $"T{i}"]));
            if (!lips) continue;
            var (a, b) = (At(i, 160, 45), At(k, 160, 45));
            var outwards = new Vec3(a.X + b.X, a.Y + b.Y, 0).Unit;
            Add($"L{i}", a + (b - a) * 0.15 + outwards * 18);
            Add($"M{i}", b + (a - b) * 0.15 + outwards * 18);
            Add($"R{i}", a + (b - a) * 0.15 + outwards * 18 + new Vec3(0, 0, -14));
            Add($"S{i}", b + (a - b) * 0.15 + outwards * 18 + new Vec3(0, 0, -14));
            faces.Add(new($"lip{i}", [$"T{i}", $"T{k}", $"M{i}", $"L{i}"]));
            faces.Add(new($"return{i}", [$"L{i}", $"M{i}", $"S{i}", $"R{i}"]));
        }
        return new Pressing("bracket", 1.2, [.. points], [.. faces]) { InsideRadius = 1.2 };
    }
}
