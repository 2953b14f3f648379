using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Edges;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.DrawingOffice.Photo.Tracing;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasurePhoto;

/// <summary>A photograph of a flat part beside the target sheet.</summary>
/// <param name="Name">Names the readings' frame.</param>
/// <param name="Raster">Upright.</param>
public sealed record PhotoRequest(string Name, Raster Raster, PhotoWork Work);

/// <summary>One thing pointed out, as it was found. Exactly one of the four is there.</summary>
/// <param name="Why">Why nothing was found there; the others count all the same.</param>
public sealed record PickSeen(PhotoPick Pick, HoleSeen? Hole, Spot? Corner, OutlineSeen? Outline, string? Why);

/// <summary>The photograph made true and what was found in it.</summary>
public sealed record PhotoResult(PhotoRequest Request, TruePhoto Photo, ImmutableArray<PickSeen> Seen)
{
    /// <summary>By how much a face 1 mm above the sheet looks too large, as a share of 1; null where the camera's stand is not known.</summary>
    public double? LargerPerMm => Photo.Stand is { } stand ? 1 / stand.Above.Value : null;

    public ImmutableArray<string> Cautions =>
    [
        .. Photo.Cautions,
        .. Seen.Where(s => s.Why is not null).Select(s => $"{s.Pick.Name}: {s.Why}"),
        .. Seen.Any(s => s is { Hole.Centre.Outside: true } or { Corner.Outside: true }) ? new[] { "Some of what was picked lies outside the target's marks, where the lens is not checked: its ± is wider." } : [],
    ];
}

/// <summary>From a picture to places in mm, each with its ±.</summary>
public static class MeasurePhoto
{
    /// <summary>px: how well a person clicks on a corner, one standard deviation (common practice).</summary>
    const double ClickStd = 1.5;

    /// <summary>Of the work, the finding of the target and its camera takes most.</summary>
    const double Finding = 0.8;

    /// <exception cref="RefusedException">No target, too few marks, a paper or a check line that cannot be.</exception>
    public static PhotoResult Run(PhotoRequest request, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        var work = request.Work.In(request.Raster.Width);
        var photo = MakeTrue.Of(request.Raster, Asked(work), Part(progress, 0, Finding), stop).Value;
        var seen = ImmutableArray.CreateBuilder<PickSeen>(work.Picks.Length);
        foreach (var pick in work.Picks)
        {
            stop.ThrowIfCancellationRequested();
            seen.Add(See(photo, pick));
            progress?.Report(Finding + (1 - Finding) * seen.Count / work.Picks.Length);
        }
        return new(request with { Work = work }, photo, seen.MoveToImmutable());
    }

    /// <summary>One thing pointed out; nothing there is told and not thrown.</summary>
    public static PickSeen See(TruePhoto photo, PhotoPick pick)
    {
        var light = photo.Light;
        foreach (var outside in pick.Clicks.Where(c => !light.Holds(c)))
            return new(pick, null, null, null, Refusal.Of("click", FormattableString.Invariant($"{outside.X:0}, {outside.Y:0}"), $"the picture is {light.Width} by {light.Height} px").Sentence);
        switch (pick.Kind)
        {
            case PickKind.Hole:
                var hole = HoleFit.Of(photo, pick.Clicks[0]);
                return new(pick, hole.Ok ? hole.Value : null, null, null, hole.Refusal?.Sentence);
            case PickKind.Corner:
                return new(pick, null, photo.At(pick.Clicks[0], ClickStd), null, null);
            default:
                var outline = Outline.Of(photo, Trace(photo, pick), pick.Closed);
                return new(pick, null, null, outline.Ok ? outline.Value : null, outline.Refusal?.Sentence);
        }
    }

    /// <summary>The way along the edge through all clicks, px.</summary>
    public static ImmutableArray<Vec2> Trace(TruePhoto photo, PhotoPick pick)
    {
        var clicks = pick.Closed ? pick.Clicks.Add(pick.Clicks[0]) : pick.Clicks;
        return [.. Enumerable.Range(1, clicks.Length - 1).SelectMany(i => Snap.Path(photo.Light, clicks[i - 1], clicks[i]).Skip(i == 1 ? 0 : 1))];
    }

    /// <summary>The whole sheet, or what the corners picked by hand surround, true to scale.</summary>
    /// <param name="perMm">Pixels per mm; null takes the photograph's own finest.</param>
    public static Parsed<TruePicture> Picture(PhotoResult made, double? perMm = null, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        var (low, high) = Shown(made.Photo, made.Request.Work);
        return Rectify.Of(made.Photo, made.Request.Raster, low, high, perMm, progress, stop);
    }

    /// <summary>Bottom left and top right of what is worth showing, mm.</summary>
    public static (Vec2 Low, Vec2 High) Shown(TruePhoto photo, PhotoWork work)
    {
        var margin = new Vec2(Target.Side, Target.Side) * 0.5;
        if (photo.Target is { } target) return (target.Half * -1 - margin, target.Half + margin);
        var mm = work.Corners.Select(c => c.Mm).ToList();
        return (new Vec2(mm.Min(p => p.X), mm.Min(p => p.Y)) - margin, new Vec2(mm.Max(p => p.X), mm.Max(p => p.Y)) + margin);
    }

    static PhotoAsked Asked(PhotoWork work)
    {
        if (work.CheckX is null != work.CheckY is null)
            throw new RefusedException(Refusal.Of(work.CheckX is null ? "check line across" : "check line up", null, "give both check lines as measured, or neither"));
        return new(work.Target is { } name ? Target.Of(name).Value : null)
        {
            Print = work is { CheckX: { } x, CheckY: { } y } ? PrintScale.Of(x, y).Value : PrintScale.Unmeasured,
            Focal35 = work.Focal35,
            Height = work.Thickness is { } thick ? new Uncertain(thick, work.ThicknessWithin / 2) : null,
            Corners = work.Corners,
        };
    }

    internal static IProgress<double>? Part(IProgress<double>? whole, double from, double part) => whole is null ? null : new Share(whole, from, part);

    sealed class Share(IProgress<double> whole, double from, double part) : IProgress<double>
    {
        public void Report(double value) => whole.Report(from + part * value);
    }
}
