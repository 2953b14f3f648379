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
    public static TakingList<ReadingKind> Of(Sample sample, ImmutableArray<BenchTool> tools = default, double? wantedStd = null, CancellationToken stop = default)
    {
        SampleCheck.Verify(sample);
        CheckSketch(sample);
        if (tools.IsDefaultOrEmpty) tools = BenchTool.Usual;
        var unsized = sample.Features.Where(f => f.Kind is FeatureKind.Hole or FeatureKind.Arc or FeatureKind.Slot && f.SketchSize is null && !sample.Readings.Any(r => r.From == f.Id && r.To is null));
        return Listing.Of(
            new FlatTaking(sample, tools, stop), wantedStd, Stage,
            loose => $"pick {(loose == 1 ? "it" : "them")} off squared paper, or bring a longer tool",
            unsized.Select(f => f.Id), stop);
    }

    /// <summary>Sizes first: what lies over or between holes means nothing without them.</summary>
    static int Stage(TakeCandidate<ReadingKind> c) => c.Kind is ReadingKind.Diameter or ReadingKind.SlotWidth or ReadingKind.SlotLength or ReadingKind.Radius ? 0
        // After the sizes the order of the ways, but from outside first: the larger jaws come to hand first.
        : c.Tool.Way switch { Way.OutsideJaws => 1, Way.InsideJaws => 2, Way.DepthRod => 3, Way.Tape => 4, _ => 5 };

    static void CheckSketch(Sample sample)
    {
        if (sample.Features.IsEmpty) throw new RefusedException(Refusal.Of("features", null, "name at least one feature of the part, with a rough place"));
        if (sample.Features.FirstOrDefault(f => f.Sketch is null && !(f.Kind == FeatureKind.Edge && f.From is not null)) is { } without)
            throw new RefusedException(Refusal.Of($"feature {without.Id}, place", null, "give a rough x and y, so that the sheet knows what lies near what"));
    }
}
