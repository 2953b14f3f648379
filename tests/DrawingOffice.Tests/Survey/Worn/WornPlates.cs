using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Survey.Worn;

/// <summary>Parts with rusted edges and worn holes whose made sizes are known because they are made here.</summary>
static class WornPlates
{
    public const double Sigma = 0.02;

    public static Reading Take(int index, ReadingKind kind, string from, string? to, double value, double sigma = Sigma) => new(index, kind, from, to, value, sigma);

    /// <summary>
    /// A plate 120 × 80 with four sound holes and four free edges; each hole read to each edge, the holes over and between one another. The edges
    /// have lost metal, exponential of the stated mean, at every place anew.
    /// </summary>
    public static Sample Rusted(Chance chance, double scale, bool told)
    {
        Vec2[] at = [new(20, 20), new(100, 18), new(97, 62), new(23, 60)];
        const double Diameter = 10;
        var readings = ImmutableArray.CreateBuilder<Reading>();
        void Add(ReadingKind kind, string from, string? to, double made, double worn = 0) =>
            readings.Add(Take(readings.Count, kind, from, to, made - worn + Sigma * chance.Normal()));

        for (var i = 0; i < 4; i++)
        {
            Add(ReadingKind.Diameter, $"H{i}", null, Diameter);
            for (var k = i + 1; k < 4; k++)
            {
                Add(ReadingKind.OutsideOverHoles, $"H{i}", $"H{k}", at[i].DistanceTo(at[k]) + Diameter);
                Add(ReadingKind.InsideBetweenHoles, $"H{i}", $"H{k}", at[i].DistanceTo(at[k]) - Diameter);
            }
            foreach (var (edge, off) in new[] { ("left", at[i].X), ("right", 120 - at[i].X), ("low", at[i].Y), ("high", 80 - at[i].Y) })
                Add(ReadingKind.EdgeToHole, $"H{i}", edge, off - Diameter / 2, -scale * Math.Log(1 - chance.Uniform()));
        }
        Feature Edge(string id, double x, double y, double turn) => new(id, FeatureKind.Edge)
        {
            Sketch = new(x, y),
            SketchTurn = turn,
            Condition = told ? FeatureCondition.Rusted : FeatureCondition.Sound,
            Wear = told ? scale : null,
        };
        return new Sample("rusted", "a plate made here",
            [
                .. at.Select((p, i) => new Feature($"H{i}", FeatureKind.Hole) { Sketch = p + new Vec2(chance.Normal(), chance.Normal()) }),
                Edge("left", 0, 40, Math.PI / 2), Edge("right", 120, 40, Math.PI / 2), Edge("low", 60, 0, 0), Edge("high", 60, 80, 0),
            ],
            readings.ToImmutable());
    }

    /// <summary>What was made, opposite the first hole: the width and height of <see cref="Rusted"/>.</summary>
    public static (string From, string To, double Made)[] Across { get; } = [("left", "right", 120), ("low", "high", 80)];
}
