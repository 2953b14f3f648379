using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.Bench;

/// <summary>Blank of 200 faces with the test for overlap; the alternative tests every pair of sides of the same outline, and does no developing.</summary>
public class BlankBench
{
    const int Flanges = 100;
    readonly FaceTree _tree = Comb();
    readonly Vec2[] _outline = [.. Develop.Blank(Comb(), new Din6935()).Value.Outline.Flatten(0.01)];

    [Benchmark]
    public Blank Ours() => Develop.Blank(_tree, new Din6935()).Value;

    [Benchmark(Baseline = true)]
    public int OverlapByAllPairs()
    {
        var crossings = 0;
        for (var i = 0; i < _outline.Length; i++)
            for (var k = i + 2; k < _outline.Length; k++)
                if (Cross(_outline[i], _outline[(i + 1) % _outline.Length], _outline[k], _outline[(k + 1) % _outline.Length])) crossings++;
        return crossings;
    }

    static bool Cross(Vec2 a, Vec2 b, Vec2 c, Vec2 d) =>
        (b - a).Cross(c - a) * (b - a).Cross(d - a) < 0 && (d - c).Cross(a - c) * (d - c).Cross(b - c) < 0;

    /// <summary>A long strip with a hundred flanges, each with a return lip; one lip is left off so that the faces are 200.</summary>
    static FaceTree Comb()
    {
        var root = new List<Vec2> { new(0, 0) };
        var (faces, bends) = (new List<Face>(), new List<Bend>());
        for (var i = 0; i < Flanges; i++)
        {
            var x = 10 + 30 * i;
            root.AddRange([new(x, 0), new(x + 20, 0)]);
            bends.Add(new Bend("root", new(x, 0), new(x + 20, 0), $"f{i}", Math.PI / 2, 2));
            faces.Add(new Face($"f{i}", Loop.Rectangle(20, 25), [new RoundHole($"h{i}", new(10, 12), 3)]));
            if (i == 0) continue;
            bends.Add(new Bend($"f{i}", new(20, 25), new(0, 25), $"g{i}", -Math.PI / 3, 2));
            faces.Add(new Face($"g{i}", Loop.Rectangle(20, 12), []));
        }
        root.AddRange([new(30 * Flanges + 10, 0), new(30 * Flanges + 10, 60), new(0, 60)]);
        faces.Insert(0, new Face("root", Loop.Of([.. root]), []));
        return FaceTree.Create("comb", 1.5, faces, bends).Value;
    }
}
