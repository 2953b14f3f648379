using System.Globalization;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.FrontOffice.MeasurePhoto;

namespace WitnessMark.Cli.Photo;

/// <summary>A photograph made true, in words and columns. Every ± holds 19 times in 20.</summary>
static class PhotoWords
{
    public static void Write(TextWriter to, PhotoResult made, IReadOnlyList<string> files)
    {
        var photo = made.Photo;
        to.WriteLine(Say($"{made.Request.Name}: {made.Request.Raster.Width} by {made.Request.Raster.Height} px, {Found(photo)}; they fit within {photo.Residual:0.000} mm"));
        to.WriteLine(photo.LensWords);
        if (photo.Stand is { } stand)
            to.WriteLine(Say($"camera {stand.AboveWords} above the sheet, {stand.Tilt * 180 / Math.PI:0}° off straight down{Whence(stand.From)}"));
        if (made.LargerPerMm is { } larger) to.WriteLine(Say($"a face that lies 1 mm higher than said looks {larger * 100:0.00} mm too long in 100 mm"));
        to.WriteLine(Say($"all lengths together are known within {2 * photo.Scale.Std * 100:0.00} % of themselves"));
        foreach (var caution in made.Cautions) to.WriteLine($"! {caution}");
        if (made.Seen.Any(s => s.Why is null)) to.WriteLine(Say($"{"",-10}{"x mm",10}{"y mm",10}{"± mm",8}  size"));
        foreach (var seen in made.Seen) Write(to, seen);
        foreach (var file in files) to.WriteLine(file);
    }

    static string Found(TruePhoto photo) => photo.Target is { } target
        ? $"target {target.Name}, {photo.Marks.Count(m => m.Used)} of {target.Count} squares found" : "corners picked by hand";

    static string Whence(FocalFrom from) => from switch
    {
        FocalFrom.Stated => ", by the focal length told",
        FocalFrom.Guessed => ", by a guessed focal length",
        _ => "",
    };

    static void Write(TextWriter to, PickSeen seen)
    {
        if (seen.Hole is { } hole) to.WriteLine(Row(seen.Pick.Name, hole.Centre, Say($"⌀ {hole.Diameter.Value:0.00} ± {hole.Diameter.Expanded:0.00}")));
        if (seen.Corner is { } corner) to.WriteLine(Row(seen.Pick.Name, corner, ""));
        if (seen.Outline is not { } outline) return;
        foreach (var (side, k) in outline.Sides.Select((s, k) => (s, k)))
            to.WriteLine(Row($"{seen.Pick.Name}-{k + 1}", side.From, side.Radius is { } radius ? Say($"then a round, R {radius.Value:0.00} ± {radius.Expanded:0.00}")
                : Say($"then straight, {(side.To.At - side.From.At).Length:0.00} long")));
        if (!outline.Closed) to.WriteLine(Row($"{seen.Pick.Name}-{outline.Sides.Length + 1}", outline.Sides[^1].To, ""));
    }

    static string Row(string name, Spot at, string size) =>
        Say($"{name,-10}{at.At.X,10:0.00}{at.At.Y,10:0.00}{2 * at.Spread.Std,8:0.00}  {size}{(at.Outside ? " (outside the marks)" : "")}").TrimEnd();

    static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
