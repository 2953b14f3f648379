using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Forms;
using WitnessMark.DrawingOffice.Drafting.Solid;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.FrontOffice.TakeSample;

/// <summary>A sketched part in space, and what is in the box to take it with.</summary>
public sealed record SolidTakeRequest(SolidSample Sample)
{
    /// <summary>Empty: <see cref="BenchTool.UsualInSpace"/>.</summary>
    public ImmutableArray<BenchTool> Tools { get; init; } = [];

    /// <summary>Wanted ± of every distance and size (19 in 20), mm; null: only hold and check everything.</summary>
    public double? WantedPlusMinus { get; init; }
}

/// <summary>The list, in the order of working.</summary>
public sealed record SolidTakeResult(SolidSample Sample, TakingList<SolidReadingKind> List)
{
    public ImmutableArray<string> Cautions => List.Cautions;

    public ImmutableArray<TakeLine> Lines => [.. List.Steps.Select(s => new TakeLine(
        s.Number, TakeSample.Group(s.Way, s.To), SolidRule.Of(s.Kind).Words, s.From, s.To ?? "", TakeSample.About(s.Expected, SolidRule.Of(s.Kind).Measure == Measure.Angle), s.Instrument, s.Redundancy))];

    /// <summary>One sentence: how many, and how far that is from the least there can be.</summary>
    public string Words => TakeSample.Said(List.Steps.Length, List.Complete, List.Least, List.LargestStd);

    /// <summary>A4, with an empty box for each reading.</summary>
    public PrintOut Print(DateTimeOffset? created) => PrintOut.Pdf($"{Sample.Id}-taking", Sheets(), created);

    public ImmutableArray<Sheet> Sheets() => TakingSheet.Draw(Sample.Id, SketchOf(Sample), TakeSample.Groups(Lines), [Words, .. Cautions]);

    /// <summary>What is sketched, as a part to picture.</summary>
    static SolidPart SketchOf(SolidSample sample)
    {
        var at = sample.Features.Where(f => f.Sketch is not null).ToDictionary(f => f.Id, f => f.Sketch!.Value);
        Vec3 Way(SolidFeature f) => (f.SketchDirection ?? sample.Features.FirstOrDefault(p => p.Id == f.On)?.SketchDirection ?? new Vec3(0, 0, 1)).Unit;
        IEnumerable<SolidFeature> Of(SolidKind kind) => sample.Features.Where(f => f.Kind == kind);
        return new(
            sample.Title,
            [.. Of(SolidKind.Point).Where(f => at.ContainsKey(f.Id)).Select(f => new SolidPoint(f.Id, at[f.Id], null, false))],
            [.. Of(SolidKind.Edge).Where(f => f.From is not null && at.ContainsKey(f.From) && at.ContainsKey(f.To!)).Select(f => new SolidLine(f.Id, at[f.From!], at[f.To!], null, false))],
            [.. Of(SolidKind.Hole).Concat(Of(SolidKind.Cylinder)).Where(f => at.ContainsKey(f.Id)).Select(f => new SolidRound(f.Id, at[f.Id], Way(f), f.SketchSize is { } d ? new Uncertain(d, 0) : null, 0, null, false))],
            [.. Of(SolidKind.Plane).Where(f => at.ContainsKey(f.Id)).Select(f => new SolidFace(f.Id, at[f.Id], Way(f), [], false))],
            [], [], []);
    }
}

/// <summary>Before a part in space goes back: which readings to take, in which order, with which tool, standing how.</summary>
public static class TakeSolid
{
    /// <exception cref="RefusedException">A feature is not sketched, the wanted ± is none, or there is no tool.</exception>
    public static SolidTakeResult Run(SolidTakeRequest request, CancellationToken stop = default)
    {
        return new SolidTakeResult(request.Sample, SolidTakingPlan.Of(request.Sample, request.Tools, TakeSample.WantedStd(request.WantedPlusMinus), stop));
    }
}
