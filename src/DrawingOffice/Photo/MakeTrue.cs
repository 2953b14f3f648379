using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Seeing;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>A photograph made true: the target found (or its corners taken as picked), the camera fitted, its stand and its cautions told.</summary>
public static class MakeTrue
{
    /// <summary>Refuses a picture that cannot be measured in, one without enough of the target, and corners that give no camera.</summary>
    /// <param name="progress">0 to 1.</param>
    public static Parsed<TruePhoto> Of(Raster raster, PhotoAsked asked, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        if ((raster.Refused() ?? Refused(raster, asked)) is { } refused) return refused;
        var light = Light.Of(raster);
        stop.ThrowIfCancellationRequested();
        if (!asked.Corners.IsEmpty) return ByHand(light, asked);
        var found = FindTarget.Of(light, asked.Target, progress, stop);
        if (!found.Ok) return found.Refusal!;
        var target = found.Value.Target;
        var sights = Sights.Of(found.Value, asked.Print);
        var fitted = CameraFit.Of(light.Width, light.Height, target.Half.Length, found.Value.Homography, sights, blooms: true);
        if (!fitted.Ok) return fitted.Refusal!;
        var marks = found.Value.Squares.Select(k => Seen(k, target, sights, fitted.Value, asked.Print)).ToImmutableArray();
        if (marks.Count(m => m.Used) < FindTarget.Least)
            return Refusal.Of("picture", $"{marks.Count(m => m.Used)} squares that agree", "the sheet must lie flat and be the one named: at least 8 of its squares must agree");
        return Told(light, target, fitted.Value, marks, asked);
    }

    static Parsed<TruePhoto> ByHand(Light light, PhotoAsked asked)
    {
        Vec2[] mm = [.. asked.Corners.Select(c => c.Mm)], px = [.. asked.Corners.Select(c => c.Px)];
        if (Homography.Of(mm, px) is not { } start)
            return Refusal.Of("corners", $"{mm.Length} corners", "four corners or more, no three of four on one line");
        var sights = Sights.Of(asked.Corners, asked.Print, asked.CornerStd);
        var fitted = CameraFit.Of(light.Width, light.Height, mm.Max(p => p.Length), start, sights, blooms: false);
        if (!fitted.Ok) return fitted.Refusal!.In("picked corners");
        var marks = asked.Corners.Select((c, i) => new MarkSeen(i, [c.Px], Residual(fitted.Value, sights, i), !double.IsNaN(fitted.Value.Residuals[2 * i]))).ToImmutableArray();
        return Told(light, asked.Target, fitted.Value, marks, asked);
    }

    static TruePhoto Told(Light light, Target? target, FittedCamera fitted, ImmutableArray<MarkSeen> marks, PhotoAsked asked)
    {
        var used = marks.Where(m => m.Used).ToArray();
        var residual = Math.Sqrt(used.Sum(m => m.Residual * m.Residual) / used.Length);
        var hull = Hull.Of((asked.Corners.IsEmpty ? used.SelectMany(m => target!.Corners(m.Index)) : asked.Corners.Select(c => c.Mm)).Select(p => Sights.Printed(p, asked.Print)));
        var photo = new TruePhoto(light, target, fitted.Camera, Stands.Of(fitted.Camera, asked.Focal35), marks, residual, fitted.Bloom, fitted.Words, asked.Print, asked.Height, []) { Hull = hull };
        return photo with { Cautions = PhotoCautions.Of(photo, fitted.Unit) };
    }

    static MarkSeen Seen(Known known, Target target, Sight[] sights, FittedCamera fitted, PrintScale print) =>
        new(known.Index, [.. FindTarget.CornersOf(known)], Residual(fitted, sights, known.Index), sights.Where((s, i) => s.Mark == known.Index && !double.IsNaN(fitted.Residuals[i])).Any());

    /// <summary>Root mean square over a mark's sights, mm; of all of them when every one was set aside.</summary>
    static double Residual(FittedCamera fitted, Sight[] sights, int mark)
    {
        var (sum, n, place) = (0.0, 0, Vec2.Zero);
        for (var i = 0; i < sights.Length; i++)
        {
            if (sights[i].Mark != mark) continue;
            place = sights[i].Mm;
            if (double.IsNaN(fitted.Residuals[i])) continue;
            (sum, n) = (sum + fitted.Residuals[i] * fitted.Residuals[i], n + 1);
        }
        return n == 0 ? double.NaN : Math.Sqrt(sum / n) / fitted.Camera.PixelsPerMm(place);
    }

    static Refusal? Refused(Raster raster, PhotoAsked asked)
    {
        if (asked.Focal35 is { } f && !(f is >= 8 and <= 600)) return Refusal.Of("focal length", $"{f:0.#}", "8 to 600 mm as on 24 x 36 mm film");
        if (asked.Height is { } h && !(h.Value is >= 0 and <= 100 && h.Std is >= 0 and <= 20)) return Refusal.Of("height of the face", $"{h.Value:0.##}", "0 to 100 mm above the sheet");
        if (!(asked.CornerStd is > 0 and <= 50)) return Refusal.Of("corner ±", $"{asked.CornerStd:0.##}", "above 0 and at most 50 pixels");
        if (asked.Corners.IsEmpty) return null;
        if (asked.Corners.Length < 4) return Refusal.Of("corners", $"{asked.Corners.Length}", "at least four, picked where their places on the sheet are known");
        foreach (var (px, mm) in asked.Corners)
            if (!(px.X >= 0 && px.Y >= 0 && px.X <= raster.Width && px.Y <= raster.Height && mm.Length < 5000))
                return Refusal.Of("corners", $"{px.X:0.#}, {px.Y:0.#}", $"within the picture of {raster.Width} x {raster.Height} pixels, and on the sheet");
        return null;
    }
}
