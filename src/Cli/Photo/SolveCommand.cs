using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.FrontOffice.MeasurePhoto;
using WitnessMark.FrontOffice.MeasurePhoto.Files;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.Stores.Photographs.Files;
using WitnessMark.Trade;

namespace WitnessMark.Cli.Photo;

/// <summary><c>wmark photo solve</c></summary>
static class SolveCommand
{
    public static Command Build(Desk desk)
    {
        var photo = new Argument<string>("PHOTO") { Description = "A photograph of a flat part on the target sheet, JPEG or PNG." };
        static Option<string?> Said(string name, string what) => new(name) { Description = what };
        var target = Said("--target", "Paper of the target sheet: a4, a3 or letter; its marks say if it is left out.");
        var checkX = Said("--check-x", "The check line across the sheet as you measured it, mm.");
        var checkY = Said("--check-y", "The check line up the sheet as you measured it, mm.");
        var thickness = Said("--thickness", "How high the traced face lies above the sheet.");
        var focal = Said("--focal", "Focal length as on 35 mm film, mm, where the picture does not tell it.");
        var rectangle = Said("--rectangle", "Without a target: width and height of a rectangle whose corners you give, as 120x80 in mm.");
        var corners = new Option<string[]>("--corners")
        {
            Description = "Four corners by hand, px as 412,1830: bottom left, bottom right, top right, top left of the rectangle, or of the frame of squares.",
            Arity = new ArgumentArity(4, 4),
            AllowMultipleArgumentsPerToken = true,
        };
        var trace = Said("--trace", "JSON of what is pointed out in the picture (docs/guide/photo.md).");
        var scale = Said("--scale", "Pixels per mm of the true picture; the photograph's own finest if left out.");
        var folder = new Option<string?>("--out", "-o") { Description = "Folder for the true picture, its drawing and the readings.", HelpName = "FOLDER" };
        var json = Common.Json();
        return Common.Command("solve", "Makes a photograph true to scale and reads holes, corners and outlines off it, each with its ±.",
            "wmark photo solve demo/photos/horn-plate.jpg --target a4 --check-x 99.8 --check-y 100.1 --thickness '1.6 mm' --trace demo/photos/horn-plate.json --out true",
            [photo, target, checkX, checkY, thickness, focal, rectangle, corners, trace, scale, folder, json], (parsed, stop) =>
            {
                var path = parsed.GetRequiredValue(photo);
                var name = FrameOf(Path.GetFileNameWithoutExtension(path));
                var picture = PictureFile.Read(Desk.Read(path, PictureHead.LargestFile)).Value;
                var work = (parsed.GetValue(trace) is { } file ? PhotoWorkJson.Read(Desk.Read(file)).Value : new PhotoWork()).In(picture.Raster.Width);
                work = work with
                {
                    Target = parsed.GetValue(target) ?? work.Target,
                    CheckX = Mm(parsed.GetValue(checkX), "--check-x") ?? work.CheckX,
                    CheckY = Mm(parsed.GetValue(checkY), "--check-y") ?? work.CheckY,
                    Thickness = Mm(parsed.GetValue(thickness), "--thickness") ?? work.Thickness,
                    Focal35 = Mm(parsed.GetValue(focal), "--focal") ?? work.Focal35 ?? picture.Focal35,
                    Corners = parsed.GetValue(corners) is { Length: > 0 } four ? Ties(four, Around(parsed.GetValue(rectangle), parsed.GetValue(target) ?? work.Target)) : work.Corners,
                };
                var told = new ShareWords(desk, quiet: parsed.GetValue(json));
                try
                {
                    var made = MeasurePhoto.Run(new(name, picture.Raster, work), told.Of("looking for the target"), stop);
                    var files = parsed.GetValue(folder) is { } to ? Write(to, made, Mm(parsed.GetValue(scale), "--scale"), told, stop) : [];
                    told.Done();
                    if (parsed.GetValue(json)) desk.WriteJson(PhotoShape.Of(made, files));
                    else PhotoWords.Write(desk.Out, made, files);
                }
                catch (OperationCanceledException)
                {
                    throw new RefusedException(new("Stopped before the end; nothing was written."));
                }
                return Task.CompletedTask;
            });
    }

    /// <summary>A frame's name is short, and a file's may hold anything.</summary>
    static string FrameOf(string file) => string.Concat(file.Take(40).Select(c => char.IsControl(c) || c == '"' ? '_' : c));

    static List<string> Write(string folder, PhotoResult made, double? scale, ShareWords told, CancellationToken stop)
    {
        if (scale is { } s && !(s is >= 0.1 and <= 100)) throw new RefusedException(Refusal.Of("--scale", $"{s}", "give 0.1 to 100 pixels per mm"));
        var (name, picture) = (made.Request.Name, MeasurePhoto.Picture(made, scale, told.Of("making it true"), stop).Value);
        var readings = PhotoRows.Of(made);
        List<string> files =
        [
            Desk.Write(Path.Combine(folder, $"{name}-true.png"), PictureFile.Png(picture.Raster, picture.PixelsPerMm)),
            Desk.Write(Path.Combine(folder, $"{name}-seen.svg"), Encoding.UTF8.GetBytes(PhotoDrawing.Svg(made, picture, Uri.EscapeDataString($"{name}-true.png")))),
        ];
        if (!readings.Readings.IsEmpty) files.Add(Desk.Write(Path.Combine(folder, $"{name}-readings.csv"), Encoding.UTF8.GetBytes(readings.Sheet($"Photograph {name}"))));
        return files;
    }

    /// <summary>A plain number is mm.</summary>
    static double? Mm(string? text, string option) => text is null ? null
        : Lengths.Read(double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? $"{text} mm" : text, TradeSpelling.Of(), option).Value.Mm;

    /// <summary>The four corners on the sheet, mm.</summary>
    static Vec2[] Around(string? rectangle, string? target)
    {
        if (rectangle is null) return Frame(Target.Of(target).Value.Half);
        if (rectangle.Split('x', 'X', '×') is [var w, var h] && double.TryParse(w, NumberStyles.Float, CultureInfo.InvariantCulture, out var width)
            && double.TryParse(h, NumberStyles.Float, CultureInfo.InvariantCulture, out var height) && width is >= 5 and <= 5000 && height is >= 5 and <= 5000)
            return Frame(new Vec2(width, height) * 0.5);
        throw new RefusedException(Refusal.Of("--rectangle", rectangle, "give width and height in mm as 120x80, 5 to 5000 each"));
    }

    static Vec2[] Frame(Vec2 half) => [half * -1, new(half.X, -half.Y), half, new(-half.X, half.Y)];

    static ImmutableArray<Tie> Ties(string[] corners, Vec2[] mm) => [.. corners.Zip(mm, (text, at) => new Tie(Px(text), at))];

    static Vec2 Px(string text) =>
        text.Split(',') is [var x, var y] && double.TryParse(x, NumberStyles.Float, CultureInfo.InvariantCulture, out var px) && double.TryParse(y, NumberStyles.Float, CultureInfo.InvariantCulture, out var py)
            ? new(px, py) : throw new RefusedException(Refusal.Of("--corners", text, "give each corner in px as 412,1830"));
}
