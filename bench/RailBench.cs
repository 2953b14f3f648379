using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.Bench;

/// <summary>
/// A rail of 12 stations and 40 holes with all that a person sees while dragging: outlines, holes, strain, ways, former, body. The alternative
/// finds only the flat shapes, by laying a fine mesh of each face flat.
/// </summary>
public class RailBench
{
    readonly Rail _rail = Make();
    readonly RailForm _form = RailForm.Of(Make(), new Din6935()).Value;

    [Benchmark]
    public MadeRail Ours() => MadeRail.Of(_rail, new Din6935(), 28).Value;

    [Benchmark(Baseline = true)]
    public int MeshFlattening() => MeshCheck.Of(_form).Length;

    public static Rail Make()
    {
        var stations = Enumerable.Range(0, 12).Select(k => new Station(250 * k, 100 - 2 * k, 40, 36)
        {
            Level = k is > 3 and < 8 ? 60 : 0,
            Plan = k > 9 ? 15 : 0,
            Ease = k is 0 or 11 ? 0 : 400,
        });
        var holes = Enumerable.Range(0, 40).Select(i => new RailHole($"H{i}", (i % 3) switch { 0 => RailFace.Web, 1 => RailFace.LowerFlange, _ => RailFace.UpperFlange },
            40 + 66 * i, AcrossFrom.Edge, i % 3 == 0 ? 40 : 22, new RoundHole($"H{i}", Vec2.Zero, 7)));
        return new("long rail", RailKind.C, 2, 3, [.. stations]) { Holes = [.. holes] };
    }
}
