using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

/// <summary>Parts to draw: our own invention.</summary>
static class Parts
{
    public static ImmutableArray<Segment> Polygon(params ReadOnlySpan<Vec2> corners)
    {
        var loop = ImmutableArray.CreateBuilder<Segment>();
        for (var i = 0; i < corners.Length; i++) loop.Add(new LineSegment(corners[i], corners[(i + 1) % corners.Length], $"C{i + 1}"));
        return loop.ToImmutable();
    }

    /// <summary>A rectangle with rounded corners, its left bottom (sharp) corner at the origin.</summary>
    public static ImmutableArray<Segment> Rounded(double width, double height, double r)
    {
        Vec2[] centres = [new(width - r, r), new(width - r, height - r), new(r, height - r), new(r, r)];
        var loop = ImmutableArray.CreateBuilder<Segment>();
        var last = new Vec2(r, 0);
        for (var i = 0; i < 4; i++)
        {
            var from = centres[i] + new Vec2(0, -r).Turned(i * Math.PI / 2);
            var to = centres[i] + new Vec2(r, 0).Turned(i * Math.PI / 2);
            loop.Add(new LineSegment(last, from));
            loop.Add(new ArcSegment(from, to, centres[i], Math.PI / 2));
            last = to;
        }
        return loop.ToImmutable();
    }

    static Sized S(double value, double std, string? made = null, double? wanted = null) => new(value, std, made, wanted);

    public static FlatPart Bracket { get; } = new([Rounded(120, 80, 8)])
    {
        Holes =
        [
            new("H1", new(15.02, 14.98), S(8.43, 0.02, "8.4", 0.1)), new("H2", new(104.97, 15.01), S(8.45, 0.02, "8.4", 0.1)),
            new("H3", new(60.4, 40.2), S(25.41, 0.015, "1 in", 0.05)),
        ],
        Slots = [new("S1", new(60, 66), 0, S(6.6, 0.03, "6.6", 0.2), S(18, 0.04))],
        Notes = ["Break all sharp edges.", "Zinc primer, then black."],
    };

    public static FlatPart EightHoles { get; } = new([Polygon(new(0, 0), new(195, 0), new(187, 85), new(115, 85), new(115, 135), new(0, 135))])
    {
        Datum = new(new(0, 0), "C1"),
        Holes =
        [
            new("H1", new(34.2, 23.1), S(8.4, 0.02)), new("H2", new(71, 12.4), S(8.4, 0.02)), new("H3", new(62.1, 46), S(10.3, 0.02)),
            new("H4", new(113, 33.3), S(6.5, 0.02)), new("H5", new(161, 46), S(8.4, 0.02)), new("H6", new(13, 68), S(8.4, 0.02)),
            new("H7", new(44, 66), S(5.1, 0.02)), new("H8", new(65, 111), S(12.7, 0.02, "1/2 in")),
        ],
    };

    public static FlatPart Link { get; } = new([
        [
            new LineSegment(new(0, -12), new(70, -9)), new ArcSegment(new(70, -9), new(70, 9), new(70, 0), Math.PI),
            new LineSegment(new(70, 9), new(0, 12)), new ArcSegment(new(0, 12), new(0, -12), new(0, 0), Math.PI),
        ]])
    {
        Datum = new(new(0, 0), "P1"),
        Holes = [new("P1", new(0, 0), S(12.72, 0.02, "1/2 in", 0.05)), new("P2", new(70, 0), S(9.55, 0.02, "3/8 in", 0.05))],
    };

    public static FlatPart Disc { get; } = new([[new ArcSegment(new(30, 0), new(30, 0), Vec2.Zero, 2 * Math.PI)]])
    {
        Datum = new(Vec2.Zero, "B"),
        Holes = [new("B", Vec2.Zero, S(20.02, 0.01, "20 H7")), .. Enumerable.Range(0, 6).Select(i => new RoundHole($"R{i + 1}", Vec2.Polar(i * Math.PI / 3 + 0.2, 22), S(5.5, 0.02, "5.5")))],
    };

    public static FlatPart Blank { get; } = new([Polygon(new(0, 0), new(90, 0), new(90, 18), new(78, 18), new(78, 96), new(60, 118), new(20, 118), new(12, 96), new(12, 18), new(0, 18))])
    {
        Folds = [new(new(12, 18), new(78, 18), Math.PI / 2, 2), new(new(12, 96), new(78, 96), -Math.PI / 4, 2)],
        Holes = [new("H1", new(45, 9), S(6.4, 0.02)), new("H2", new(30, 60), S(10, 0.02)), new("H3", new(60, 60), S(10, 0.02))],
    };

    public static TitleFields Title(string title) => new(title, "WM-0417")
    {
        Material = "Mild steel sheet, CR4",
        Thickness = "16 SWG (1.63 mm)",
        DrawnBy = "T. Marlow",
        Date = new(2026, 11, 25),
        MeasuredFrom = "sample S-12, survey 3",
        GeneralTolerance = "General tolerance ISO 2768-m",
    };
}
