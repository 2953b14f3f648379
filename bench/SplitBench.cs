using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.Bench;

/// <summary>
/// Split of a bracket of 31 faces and 34 joints, whole and with a sheet too small for it. The alternatives: every set of folds tried one after
/// another, which only a bracket of 7 faces allows, beside ours on the same; and the plain spanning tree of most saving, which asks no tool.
/// </summary>
public class SplitBench
{
    static readonly BendMethod Method = new NeutralAxis(0.42);
    readonly FaceModel _large = FaceModel.Of(Bracket(7, 6, true)).Value;
    readonly FaceModel _small = FaceModel.Of(Bracket(2, 2, false)).Value;
    static readonly SheetShop Tight = SheetShop.Usual with { SheetLength = 500, SheetWidth = 190 };

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

    /// <summary>A web with end walls and tabs along both sides, the outer ones meeting the end walls; lips turned out from all when it has lips.</summary>
    internal static Pressing Bracket(int front, int back, bool lips)
    {
        const double Length = 480, Width = 120, Height = 30, Lip = 15;
        var (points, faces) = (new Dictionary<Vec3, string>(), new List<PressingFace>());
        string At(double x, double y, double z)
        {
            var at = new Vec3(x, y, z);
            return points.TryGetValue(at, out var name) ? name : points[at] = $"P{points.Count}";
        }
        void Wall(string name, double x0, double y0, double x1, double y1)
        {
            faces.Add(new(name, [At(x0, y0, 0), At(x1, y1, 0), At(x1, y1, Height), At(x0, y0, Height)]));
            if (!lips) return;
            var (along, off) = (new Vec3(x1 - x0, y1 - y0, 0).Unit, new Vec3(x1 - x0, y1 - y0, 0).Length * 0.05);
            var outwards = new Vec3(along.Y, -along.X, 0) * Lip;
            var (a, b) = (new Vec3(x0, y0, Height) + along * off + outwards, new Vec3(x1, y1, Height) - along * off + outwards);
            faces.Add(new($"{name} lip", [At(x0, y0, Height), At(x1, y1, Height), At(b.X, b.Y, b.Z), At(a.X, a.Y, a.Z)]));
        }
        var ring = new List<string>();
        void Side(string name, int tabs, Func<double, (double X, double Y)> at)
        {
            // Gaps between tabs, none at the corners.
            var (gap, tab) = (8.0, (Length - 8.0 * (tabs - 1)) / tabs);
            for (var i = 0; i < tabs; i++)
            {
                var (p, q) = (at(i * (tab + gap)), at(i == tabs - 1 ? Length : i * (tab + gap) + tab));
                ring.AddRange([At(p.X, p.Y, 0), At(q.X, q.Y, 0)]);
                Wall($"{name}{i}", p.X, p.Y, q.X, q.Y);
            }
        }
        Side("front", front, s => (s, 0));
        Wall("right", Length, 0, Length, Width);
        Side("back", back, s => (Length - s, Width));
        Wall("left", 0, Width, 0, 0);
        faces.Insert(0, new("web", [.. ring]));
        return new Pressing("bracket", 1.2, [.. points.Select(p => new PressingPoint(p.Value, p.Key, Vec3.Zero))], [.. faces]) { InsideRadius = 1.2 };
    }
}
