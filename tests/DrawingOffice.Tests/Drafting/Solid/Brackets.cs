using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Solid;
using WitnessMark.Maths;

namespace WitnessMark.Tests.DrawingOffice.Drafting.Solid;

/// <summary>A bent bracket in space whose every figure is known: floor A, back B that leans by a chosen angle, ear C that hangs square.</summary>
static class Brackets
{
    static readonly Uncertain s_known = new(0, 0.02);

    /// <param name="lean">Of the back past square, radians.</param>
    public static SolidPart Step(double lean, bool looseEar = false)
    {
        var up = new Vec3(0, Math.Sin(lean), Math.Cos(lean));
        (string Id, Vec3 At)[] corners =
        [
            ("P1", new(0, 0, 0)), ("P2", new(80, 0, 0)), ("P3", new(80, 50, 0)), ("P4", new(0, 50, 0)),
            ("P5", new Vec3(10, 50, 0) + up * 40), ("P6", new Vec3(70, 50, 0) + up * 40), ("P7", new(80, 5, -30)), ("P8", new(80, 45, -30)),
        ];
        var at = corners.ToDictionary(c => c.Id, c => c.At);
        (string, string)[] edges = [("P1", "P2"), ("P2", "P3"), ("P3", "P4"), ("P4", "P1"), ("P4", "P5"), ("P5", "P6"), ("P6", "P3"), ("P2", "P7"), ("P7", "P8"), ("P8", "P3")];
        ImmutableArray<Vec3> Loop(params string[] ids) => [.. ids.Select(i => at[i])];
        Uncertain Sure(double value) => s_known with { Value = value };
        var normal = new Vec3(0, -Math.Cos(lean), Math.Sin(lean));
        return new(
            "Step bracket",
            [.. corners.Select(c => new SolidPoint(c.Id, c.At, 0.02, looseEar && c.Id is "P7" or "P8" && looseEar))],
            [.. edges.Select((e, i) => new SolidLine($"E{i + 1}", at[e.Item1], at[e.Item2], Sure(at[e.Item1].DistanceTo(at[e.Item2])), looseEar && i is 7 or 8 or 9 && looseEar))],
            [
                new("H1", new(18, 15, 0), new(0, 0, 1), Sure(8.4), 0, 0.03, false), new("H2", new(60, 15, 0), new(0, 0, 1), Sure(8.4), 0, 0.03, false),
                new("H3", new Vec3(40, 50, 0) + up * 22, normal, Sure(25.4), 0, 0.03, false), new("H4", new(80, 25, -16), new(1, 0, 0), Sure(10.5), 0, 0.03, looseEar),
            ],
            [
                new("A", new(40, 25, 0), new(0, 0, 1), Loop("P1", "P2", "P3", "P4"), false), new("B", new Vec3(40, 50, 0) + up * 20, normal, Loop("P4", "P3", "P6", "P5"), false),
                new("C", new(80, 25, -15), new(1, 0, 0), Loop("P2", "P7", "P8", "P3"), looseEar),
            ],
            [new("A", "B", new(Math.PI / 2 + lean, 0.002), null), new("A", "C", new(Math.PI / 2, 0.002), null), new("B", "C", new(Math.PI / 2, 0.002), null)],
            [new("A", "P5", Sure(40 * Math.Cos(lean))), new("A", "H3", Sure(22 * Math.Cos(lean)))],
            ["± holds 95 in 100."]);
    }
}
