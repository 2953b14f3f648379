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
    public static TakingList<SolidReadingKind> Of(SolidSample sample, ImmutableArray<BenchTool> tools = default, double? wantedStd = null, CancellationToken stop = default)
    {
        SolidCheck.Verify(sample);
        var joined = FlatJoin.Of(sample);
        SolidCheck.Verify(joined);
        CheckSketch(joined);
        if (tools.IsDefaultOrEmpty) tools = BenchTool.UsualInSpace;
        var settle = joined.Features.Any(f => f.Kind == SolidKind.SetUp) ? "bring a longer tool, or name another set-up" : "name a set-up on the surface plate, or bring a longer tool";
        var unsized = joined.Features.Where(f => f.Kind == SolidKind.Hole && f.SketchSize is null && !joined.Readings.Any(r => r.From == f.Id && r.To is null));
        return Listing.Of(new SolidTaking(joined, tools, stop), wantedStd, Stage, _ => settle, unsized.Select(f => f.Id), stop);
    }

    /// <summary>Sizes first; then what jaws, rod and tape reach before the part is stood on the plate, set-up by set-up.</summary>
    static int Stage(TakeCandidate<SolidReadingKind> c) => c.Kind == SolidReadingKind.Diameter ? 0
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
}
