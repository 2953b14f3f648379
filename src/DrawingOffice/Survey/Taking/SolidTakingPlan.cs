using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>From the sketch of a part in space to the list of readings to take.</summary>
public static class SolidTakingPlan
{
    /// <summary>Cause: a sheet of more features takes minutes on a slow machine.</summary>
    const int MostFeatures = 120;

    /// <param name="sample">With a rough place for every corner and hole and a rough way for every face and set-up; readings taken already count. A set-up that it names is used.</param>
    /// <param name="tools">Those at hand; empty or default: <see cref="BenchTool.UsualInSpace"/>.</param>
    /// <param name="wantedStd">Wanted standard uncertainty of every distance and size, mm; null: only hold and check.</param>
    /// <exception cref="RefusedException">A feature is not sketched, or the sample is none.</exception>
    public static SolidTakingList Of(SolidSample sample, ImmutableArray<BenchTool> tools = default, double? wantedStd = null, CancellationToken stop = default)
    {
        SolidCheck.Verify(sample);
        var joined = FlatJoin.Of(sample);
        SolidCheck.Verify(joined);
        CheckSketch(joined);
        if (tools.IsDefaultOrEmpty) tools = BenchTool.UsualInSpace;
        var network = new SolidTaking(joined, tools, stop);
        var choice = ShortestList.Of(network, wantedStd, stop);
        var ordered = choice.Chosen.Zip(choice.Redundancy, (c, r) => (At: network.At(c), Redundancy: r))
            .OrderBy(s => Stage(s.At)).ThenBy(s => s.At.Tool.Way).ThenBy(s => s.At.Tool.Way == Way.HeightGauge ? s.At.To : 0).ThenBy(s => s.At.Kind).ThenBy(s => s.At.From).ThenBy(s => s.At.To).ToList();
        ImmutableArray<SolidTakingStep> steps = [.. ordered.Select((s, i) => new SolidTakingStep(
            i + 1, s.At.Kind, joined.Features[s.At.From].Id, s.At.To < 0 ? null : joined.Features[s.At.To].Id, s.At.Expected, s.At.Tool.Instrument, s.At.Tool.Way, s.Redundancy))];
        ImmutableArray<string> loose = [.. network.Loose(choice.Chosen)];
        ImmutableArray<int> open = [.. steps.Where(s => s.Redundancy < ShortestList.Checked).Select(s => s.Number)];
        double? largest = loose.IsEmpty ? Math.Sqrt(choice.LargestVariance) : null;
        return new SolidTakingList(steps, choice.Least, loose, open, largest, [.. Cautions(joined, loose, open, largest, wantedStd)]);
    }

    /// <summary>Sizes first; then what jaws, rod and tape reach before the part is stood on the plate, set-up by set-up.</summary>
    static int Stage(SolidTaking.Candidate c) => c.Kind == SolidReadingKind.Diameter ? 0
        : c.Tool.Way switch { Way.OutsideJaws => 1, Way.InsideJaws => 2, Way.DepthRod => 3, Way.Tape => 4, Way.Protractor => 5, _ => 6 };

    static void CheckSketch(SolidSample sample)
    {
        if (sample.Features.IsEmpty) throw new RefusedException(Refusal.Of("features", null, "name at least one feature of the part, with a rough place"));
        if (sample.Features.Length > MostFeatures) throw new RefusedException(Refusal.Of("features", $"{sample.Features.Length}", $"a taking sheet in space has at most {MostFeatures}; take the part in two halves that share three corners"));
        foreach (var f in sample.Features)
        {
            var cornered = f is { Kind: SolidKind.Edge, From: not null };
            if (f.Sketch is null && !cornered && f.Kind is not (SolidKind.Plane or SolidKind.SetUp))
                throw new RefusedException(Refusal.Of($"feature {f.Id}, place", null, "give a rough x, y and z, so that the sheet knows what lies near what"));
            if (f.SketchDirection is null && !cornered && f.Kind is not (SolidKind.Point or SolidKind.Hole))
                throw new RefusedException(Refusal.Of($"feature {f.Id}, way", null, $"say roughly {(f.Kind == SolidKind.Plane ? "where it looks" : f.Kind == SolidKind.SetUp ? "which side of the part is up" : "where it points")}, such as up or front"));
        }
    }

    static IEnumerable<string> Cautions(SolidSample sample, ImmutableArray<string> loose, ImmutableArray<int> open, double? largest, double? wanted)
    {
        if (!loose.IsEmpty) yield return $"No reading with these tools settles {string.Join(", ", loose)}; {(sample.Features.Any(f => f.Kind == SolidKind.SetUp) ? "bring a longer tool, or name another set-up" : "name a set-up on the surface plate, or bring a longer tool")}.";
        if (!open.IsEmpty) yield return $"Nothing else checks reading{(open.Length == 1 ? "" : "s")} {string.Join(", ", open)}: take {(open.Length == 1 ? "it" : "each")} twice.";
        if (largest is { } std && wanted is { } w && std > w) yield return FormattableString.Invariant($"The wanted ± {2 * w:0.###} mm is out of reach of these tools: ± {2 * std:0.###} mm is the least sure.");
        foreach (var f in sample.Features.Where(f => f.Kind == SolidKind.Hole && f.SketchSize is null && !sample.Readings.Any(r => r.From == f.Id && r.To is null)))
            yield return $"{f.Id}: no rough size was sketched; whether the jaws go in is not known.";
        yield return "What stands between the jaws is not known from a sketch: where a reading cannot be taken, leave the box empty, and the sheet finds another.";
    }
}
