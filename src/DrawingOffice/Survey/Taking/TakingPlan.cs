using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>From a sketch to the list of readings to take.</summary>
public static class TakingPlan
{
    /// <param name="sample">With a rough place for every feature that has one; readings taken already count.</param>
    /// <param name="tools">Those at hand; empty or default: <see cref="BenchTool.Usual"/>.</param>
    /// <param name="wantedStd">Wanted standard uncertainty of every centre distance and size, mm; null: only hold and check.</param>
    /// <exception cref="RefusedException">A feature has no rough place, or the sample is none.</exception>
    public static TakingList Of(Sample sample, ImmutableArray<BenchTool> tools = default, double? wantedStd = null, CancellationToken stop = default)
    {
        SampleCheck.Verify(sample);
        CheckSketch(sample);
        if (tools.IsDefaultOrEmpty) tools = BenchTool.Usual;
        var network = new FlatTaking(sample, tools, stop);
        var choice = ShortestList.Of(network, wantedStd, stop);
        var ordered = choice.Chosen.Zip(choice.Redundancy, (c, r) => (At: network.At(c), Redundancy: r))
            .OrderBy(s => Stage(s.At)).ThenBy(s => s.At.Tool.Way).ThenBy(s => s.At.Kind).ThenBy(s => s.At.From).ThenBy(s => s.At.To).ToList();
        ImmutableArray<TakingStep> steps = [.. ordered.Select((s, i) => new TakingStep(
            i + 1, s.At.Kind, sample.Features[s.At.From].Id, s.At.To < 0 ? null : sample.Features[s.At.To].Id, s.At.Expected, s.At.Tool.Instrument, s.At.Tool.Way, s.Redundancy))];
        ImmutableArray<string> loose = [.. network.Loose(choice.Chosen)];
        ImmutableArray<int> open = [.. steps.Where(s => s.Redundancy < ShortestList.Checked).Select(s => s.Number)];
        double? largest = loose.IsEmpty ? Math.Sqrt(choice.LargestVariance) : null;
        return new TakingList(steps, choice.Least, loose, open, largest, [.. Cautions(sample, loose, open, largest, wantedStd)]);
    }

    /// <summary>Sizes first: what lies over or between holes means nothing without them.</summary>
    static int Stage(FlatTaking.Candidate c) => c.Kind is ReadingKind.Diameter or ReadingKind.SlotWidth or ReadingKind.SlotLength or ReadingKind.Radius ? 0
        // After the sizes the order of the ways, but from outside first: the larger jaws come to hand first.
        : c.Tool.Way switch { Way.OutsideJaws => 1, Way.InsideJaws => 2, Way.DepthRod => 3, Way.Tape => 4, _ => 5 };

    static void CheckSketch(Sample sample)
    {
        if (sample.Features.IsEmpty) throw new RefusedException(Refusal.Of("features", null, "name at least one feature of the part, with a rough place"));
        if (sample.Features.FirstOrDefault(f => f.Sketch is null && !(f.Kind == FeatureKind.Edge && f.From is not null)) is { } without)
            throw new RefusedException(Refusal.Of($"feature {without.Id}, place", null, "give a rough x and y, so that the sheet knows what lies near what"));
    }

    static IEnumerable<string> Cautions(Sample sample, ImmutableArray<string> loose, ImmutableArray<int> open, double? largest, double? wanted)
    {
        if (!loose.IsEmpty) yield return $"No reading with these tools settles {string.Join(", ", loose)}; pick {(loose.Length == 1 ? "it" : "them")} off squared paper, or bring a longer tool.";
        if (!open.IsEmpty) yield return $"Nothing else checks reading{(open.Length == 1 ? "" : "s")} {string.Join(", ", open)}: take {(open.Length == 1 ? "it" : "each")} twice.";
        if (largest is { } std && wanted is { } w && std > w) yield return FormattableString.Invariant($"The wanted ± {2 * w:0.###} mm is out of reach of these tools: ± {2 * std:0.###} mm is the least sure.");
        foreach (var f in sample.Features.Where(f => f.Kind is FeatureKind.Hole or FeatureKind.Arc or FeatureKind.Slot && f.SketchSize is null && !sample.Readings.Any(r => r.From == f.Id && r.To is null)))
            yield return $"{f.Id}: no rough size was sketched; whether the jaws go in is not known.";
        yield return "What stands between the jaws is not known from a sketch: where a reading cannot be taken, leave the box empty, and the sheet finds another.";
    }
}
