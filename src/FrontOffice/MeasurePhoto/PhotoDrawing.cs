using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Tracing;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Screen;

namespace WitnessMark.FrontOffice.MeasurePhoto;

/// <summary>What was found, drawn over the true picture at its scale.</summary>
public static class PhotoDrawing
{
    /// <summary>Height of lettering, mm.</summary>
    const double Lettering = 3.5;

    /// <summary>Marks in mm from the picture's bottom left corner.</summary>
    public static Sheet Of(PhotoResult made, TruePicture picture)
    {
        var (width, height) = (picture.Raster.Width / picture.PixelsPerMm, picture.Raster.Height / picture.PixelsPerMm);
        var origin = new Vec2(picture.Corner.X, picture.Corner.Y - height);
        return new(made.Request.Name, width, height, [.. made.Seen.SelectMany(s => Marks(s, origin))]);
    }

    /// <summary>The same with the picture under it.</summary>
    /// <param name="address">Of the true picture, as the SVG shall name it.</param>
    public static string Svg(PhotoResult made, TruePicture picture, string address)
    {
        var sheet = Of(made, picture);
        var svg = PrintRoom.Screen.Svg.Write(sheet, new SvgOptions(RealText: true));
        var paper = svg.IndexOf("/>\n", svg.IndexOf("class=\"paper\"", StringComparison.Ordinal), StringComparison.Ordinal) + 3;
        var image = string.Create(CultureInfo.InvariantCulture, $"<image href=\"{address}\" width=\"{sheet.Width:0.###}\" height=\"{sheet.Height:0.###}\" preserveAspectRatio=\"none\"/>\n");
        return svg.Insert(paper, image);
    }

    static IEnumerable<Mark> Marks(PickSeen seen, Vec2 origin)
    {
        if (seen.Hole is { } hole)
        {
            yield return new CircleMark(hole.Centre.At - origin, hole.Diameter.Value / 2, Layers.Holes, Stroke.Outline, Tone.Accent);
            foreach (var mark in Cross(hole.Centre.At - origin)) yield return mark;
            yield return Word(hole.Centre.At - origin + new Vec2(hole.Diameter.Value / 2 + 1, 1), $"{seen.Pick.Name} ⌀{Mm(hole.Diameter)}");
        }
        if (seen.Corner is { } corner)
        {
            foreach (var mark in Cross(corner.At - origin)) yield return mark;
            yield return Word(corner.At - origin + new Vec2(2, 2), seen.Pick.Name);
        }
        if (seen.Outline is { } outline)
        {
            foreach (var side in outline.Sides) yield return SideMark(side, origin);
            foreach (var (side, k) in outline.Sides.Select((s, k) => (s, k)))
                yield return Word(side.Middle.At - origin + new Vec2(1.5, 1.5), side.Radius is { } radius ? $"{seen.Pick.Name}-{k + 1} R{Mm(radius)}" : $"{seen.Pick.Name}-{k + 1}");
        }
    }

    static Mark SideMark(SideSeen side, Vec2 origin)
    {
        if (side is not { Centre: { } centre, Radius: { } radius }) return new LineMark(side.From.At - origin, side.To.At - origin, Layers.Outline, Stroke.Outline, Tone.Accent);
        double Turn(Spot s) => Math.Atan2(s.At.Y - centre.At.Y, s.At.X - centre.At.X);
        double Ahead(double a) => (a % (2 * Math.PI) + 2 * Math.PI) % (2 * Math.PI);
        var start = Turn(side.From);
        var (middle, end) = (Ahead(Turn(side.Middle) - start), Ahead(Turn(side.To) - start));
        // Anticlockwise when the middle comes before the end that way round.
        var sweep = end < 1e-6 ? 2 * Math.PI : middle < end ? end : end - 2 * Math.PI;
        return new ArcMark(centre.At - origin, radius.Value, start, sweep, Layers.Outline, Stroke.Outline, Tone.Accent);
    }

    static ImmutableArray<Mark> Cross(Vec2 at) =>
    [
        new LineMark(at - new Vec2(1.5, 0), at + new Vec2(1.5, 0), Layers.Centre, Stroke.Thin, Tone.Accent),
        new LineMark(at - new Vec2(0, 1.5), at + new Vec2(0, 1.5), Layers.Centre, Stroke.Thin, Tone.Accent),
    ];

    static TextMark Word(Vec2 at, string text) => new(at, text, Lettering, Layers.Text, Tone: Tone.Accent);

    static string Mm(Uncertain size) => string.Create(CultureInfo.InvariantCulture, $"{size.Value:0.00} ± {size.Expanded:0.00}");
}
