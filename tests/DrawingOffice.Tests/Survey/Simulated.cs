using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>Plates whose truth is known because they are made here, for counting how often a verdict is right.</summary>
static class Simulated
{
    /// <summary>Corners and holes on a jittered grid, each tied to its nearest neighbours; outline edges; a diameter for each hole.</summary>
    /// <param name="ties">Distances from each feature to its nearest later ones.</param>
    public static Sample Plate(int points, int ties, Chance chance, double sigma = 0.02)
    {
        var columns = (int)Math.Ceiling(Math.Sqrt(points));
        var truth = Enumerable.Range(0, points)
            .Select(i => new Vec2(25 * (i % columns) + chance.Uniform(-6, 6), 25 * (i / columns) + chance.Uniform(-6, 6))).ToArray();
        var sizes = truth.Select(_ => chance.Uniform(5, 12)).ToArray();
        var readings = ImmutableArray.CreateBuilder<Reading>();
        void Add(ReadingKind kind, int a, int b, double value) =>
            readings.Add(new Reading(readings.Count, kind, $"H{a}", b < 0 ? null : $"H{b}", value + sigma * chance.Normal(), sigma));

        for (var i = 0; i < points; i++)
        {
            Add(ReadingKind.Diameter, i, -1, sizes[i]);
            foreach (var j in Enumerable.Range(0, points).Where(j => j > i).OrderBy(j => truth[i].DistanceTo(truth[j])).Take(ties))
            {
                var c = truth[i].DistanceTo(truth[j]);
                switch (chance.Below(3))
                {
                    case 0: Add(ReadingKind.CentreDistance, i, j, c); break;
                    case 1: Add(ReadingKind.OutsideOverHoles, i, j, c + (sizes[i] + sizes[j]) / 2); break;
                    default: Add(ReadingKind.InsideBetweenHoles, i, j, c - (sizes[i] + sizes[j]) / 2); break;
                }
            }
        }
        var features = truth.Select((p, i) => new Feature($"H{i}", FeatureKind.Hole) { Sketch = p + new Vec2(chance.Normal(), chance.Normal()) });
        return new Sample("simulated", "a plate made here", [.. features], readings.ToImmutable());
    }

    public static Sample WithError(Sample sample, int index, double error) =>
        sample with { Readings = sample.Readings.SetItem(index, sample.Readings[index] with { Value = sample.Readings[index].Value + error }) };
}
