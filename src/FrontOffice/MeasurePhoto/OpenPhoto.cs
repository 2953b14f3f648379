using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Tracing;
using WitnessMark.FrontOffice.MeasurePhoto.Files;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasurePhoto;

/// <summary>A photograph to be made true: plain texts, so that it can be asked of another thread.</summary>
/// <param name="Work">JSON as kept.</param>
public sealed record PhotoTrueAsked(string Name, string Work);

/// <summary>A thing pointed out in the true picture.</summary>
/// <param name="Places">mm on the face, y up; px of the photograph, y down, where <paramref name="AsTaken"/>.</param>
public sealed record PickAsked(string Name, PickKind Kind, ImmutableArray<Vec2> Places, bool Closed, bool AsTaken = false);

/// <summary>The pick as it is kept, in px, and what was found there.</summary>
public sealed record PickAnswer(PhotoPick Pick, PickShown Shown);

/// <summary>
/// The photograph that lies open while a person works in it: its pixels and, once it was made true, its camera. State on purpose: a click
/// must be answered at once and not after the target has been looked for again.
/// </summary>
/// <param name="raster">Upright.</param>
public sealed class OpenPhoto(Raster raster)
{
    /// <summary>Pixels of the true picture on the screen: sharper than any screen shows it whole.</summary>
    const double MostShown = 2_400_000;

    /// <summary>Of the work, the finding takes most and the picture the rest.</summary>
    const double Finding = 0.75;

    PhotoResult? _made;

    /// <exception cref="RefusedException">No target, too few marks, a paper or check line that cannot be; the photograph stays open.</exception>
    public PhotoShown MakeTrue(PhotoTrueAsked asked, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        var made = MeasurePhoto.Run(new(asked.Name, raster, PhotoWorkJson.Read(asked.Work).Value), MeasurePhoto.Part(progress, 0, Finding), stop);
        var (low, high) = MeasurePhoto.Shown(made.Photo, made.Request.Work);
        var size = high - low;
        var perMm = Math.Min(Math.Sqrt(MostShown / (size.X * size.Y)), Math.Max(1, made.Photo.Camera.PixelsPerMm((low + high) * 0.5)));
        var picture = MeasurePhoto.Picture(made, perMm, MeasurePhoto.Part(progress, Finding, 1 - Finding), stop).Value;
        _made = made;
        var photo = made.Photo;
        return new(
            photo.Target is { } target ? $"{photo.Marks.Count(m => m.Used)} of the {target.Count} squares of target {target.Name}" : $"{made.Request.Work.Corners.Length} corners picked by hand",
            photo.Residual, photo.LensWords, photo.Stand is { } stand ? Words(stand) : null, made.LargerPerMm, 2 * photo.Scale.Std, made.Cautions,
            $"data:image/png;base64,{Convert.ToBase64String(PictureFile.Png(picture.Raster, picture.PixelsPerMm))}",
            picture.Corner, picture.Raster.Width / picture.PixelsPerMm, picture.Raster.Height / picture.PixelsPerMm,
            [.. made.Seen.Select(s => PickShown.Of(photo, s, asked.Name))]);
    }

    /// <exception cref="RefusedException">The photograph was not made true yet.</exception>
    public PickAnswer Pick(PickAsked asked)
    {
        var pick = new PhotoPick(asked.Name, asked.Kind, asked.AsTaken ? asked.Places : [.. asked.Places.Select(p => Touched(asked.Kind, Made.Photo.ToPhoto(p)))], asked.Closed);
        return new(pick, PickShown.Of(Made.Photo, MeasurePhoto.See(Made.Photo, pick), Made.Request.Name));
    }

    /// <summary>A finger means the corner, or the edge, that lies within a few pixels; its ± stays that of a touch.</summary>
    Vec2 Touched(PickKind kind, Vec2 px) => kind == PickKind.Corner ? Corner.Near(Made.Photo.Light, px) : px;

    /// <summary>The way along the edge through the places so far (mm on the face, y up), as an SVG path in mm, y down.</summary>
    /// <exception cref="RefusedException">The photograph was not made true yet.</exception>
    public string Trail(ImmutableArray<Vec2> places)
    {
        var pick = new PhotoPick("", PickKind.Outline, [.. places.Select(Made.Photo.ToPhoto)]);
        return PickShown.Line(places.Length < 2 ? places : MeasurePhoto.Trace(Made.Photo, pick).Select(Made.Photo.ToFace));
    }

    PhotoResult Made => _made ?? throw new RefusedException(Refusal.Of("photograph", null, "make it true first"));

    static string Words(Stand stand) => string.Create(CultureInfo.InvariantCulture,
        $"{stand.AboveWords} above the sheet, {stand.Tilt * 180 / Math.PI:0}° off straight down");
}
