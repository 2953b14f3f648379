using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.PractiseMeasuring;

/// <summary>
/// The plate of one practice sheet as it is drawn, mm. Its sizes follow from the number of the sheet alone, to the hundredth, and no two sheets
/// have the same: nobody measures with the answer in mind. They leave this folder only with a comparison or on paper.
/// </summary>
/// <param name="Corners">In order round the outline.</param>
sealed record PracticePlate(int Number, ImmutableArray<(string Id, Vec2 At)> Corners, ImmutableArray<(string Id, Vec2 At, double Diameter)> Holes)
{
    public const int Last = 9999;

    /// <summary>The middle of all plates: what a person would sketch of any of them, which gives nothing of one away.</summary>
    public static PracticePlate Rough { get; } = new(
        0, [("C1", new(0, 0)), ("C2", new(110, 0)), ("C3", new(110, 60)), ("C4", new(85, 80)), ("C5", new(0, 80))],
        [("H1", new(25, 20), 20), ("H2", new(80, 25), 20), ("H3", new(45, 55), 20)]);

    public static PracticePlate Of(int number)
    {
        if (number is < 1 or > Last) throw new RefusedException(Refusal.Of("sheet number", $"{number}", $"give a whole number from 1 to {Last}"));
        var chance = new Chance((ulong)number);
        double About(double middle, double half) => Math.Round(chance.Uniform(middle - half, middle + half), 2);
        // A 150 mm calliper reaches from any corner to any other.
        var (wide, high) = (About(111, 6), About(82, 5));
        ImmutableArray<(string, Vec2)> corners =
        [
            ("C1", new(0, 0)), ("C2", new(wide, About(0, 1.5))), ("C3", new(wide + About(0, 1.5), high - About(21, 4))),
            ("C4", new(wide - About(26, 4), high + About(0, 1))), ("C5", new(About(0, 1.5), high - About(0, 1))),
        ];
        double[] sizes = [About(12, 2), About(18, 3), About(26, 3)];
        var first = chance.Below(3);
        ImmutableArray<(string, Vec2, double)> holes =
        [
            ("H1", new(About(24, 4), About(22, 3)), sizes[first]), ("H2", new(About(wide - 31, 4), About(26, 3)), sizes[(first + 1) % 3]),
            ("H3", new(About(43, 4), About(57, 2)), sizes[(first + 2) % 3]),
        ];
        return new(number, corners, holes);
    }

    public IEnumerable<(string Id, string From, string To)> Edges => Corners.Select((c, i) => ($"E{i + 1}", c.Id, Corners[(i + 1) % Corners.Length].Id));

    public ImmutableArray<Feature> Features =>
    [
        .. Corners.Select(c => new Feature(c.Id, FeatureKind.Point) { Sketch = c.At }),
        .. Edges.Select(e => new Feature(e.Id, FeatureKind.Edge) { From = e.From, To = e.To }),
        .. Holes.Select(h => new Feature(h.Id, FeatureKind.Hole) { Sketch = h.At, SketchSize = h.Diameter }),
    ];

    /// <summary>What a reading of the sheet would give that a printer has drawn to this scale.</summary>
    public double True(ReadingKind kind, string from, string? to, PrintScale scale) => kind switch
    {
        ReadingKind.Diameter => Diameter(from, scale),
        ReadingKind.LengthAlongEdge => Edges.First(e => e.Id == from) is var e ? At(e.From, scale).DistanceTo(At(e.To, scale)) : 0,
        ReadingKind.CentreDistance => Apart(from, to!, scale),
        ReadingKind.OutsideOverHoles => Apart(from, to!, scale) + (Diameter(from, scale) + Diameter(to!, scale)) / 2,
        ReadingKind.InsideBetweenHoles => Apart(from, to!, scale) - (Diameter(from, scale) + Diameter(to!, scale)) / 2,
        ReadingKind.CentreToEdge => FromEdge(from, to!, scale),
        ReadingKind.EdgeToHole => FromEdge(from, to!, scale) - Diameter(from, scale) / 2,
        _ => throw new RefusedException(Refusal.Of("kind", MeasureSample.KindRule.Of(kind).Words, "on a practice sheet read a diameter, a length along an edge, or a distance between corners, holes and edges")),
    };

    double Apart(string a, string b, PrintScale scale) => At(a, scale).DistanceTo(At(b, scale));

    double FromEdge(string centre, string edge, PrintScale scale)
    {
        var (_, from, to) = Edges.First(e => e.Id == edge);
        var (a, b) = (At(from, scale), At(to, scale));
        return Math.Abs((At(centre, scale) - a).Cross((b - a).Unit));
    }

    Vec2 At(string id, PrintScale scale) => scale.Printed(Corners.Any(c => c.Id == id) ? Corners.First(c => c.Id == id).At : Holes.First(h => h.Id == id).At);

    /// <summary>A corner has none.</summary>
    double Diameter(string id, PrintScale scale) => Holes.Where(h => h.Id == id).Select(h => h.Diameter * (1 + (scale.Across + scale.Up) / 2)).FirstOrDefault();
}

/// <summary>How much longer than drawn a printer made things: 0.005 is half a per cent.</summary>
readonly record struct PrintScale(double Across, double Up)
{
    public Vec2 Printed(Vec2 drawn) => new(drawn.X * (1 + Across), drawn.Y * (1 + Up));
}
