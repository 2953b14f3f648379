using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Tracing;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasurePhoto;

/// <summary>A photograph made true as a page shows it: plain texts and figures, every ± for 19 of 20.</summary>
/// <param name="Found">What the camera was found from.</param>
/// <param name="Residual">How well the marks fit, mm.</param>
/// <param name="Camera">Where it stood; null where that is not known.</param>
/// <param name="LargerPerMm">By how much 1 mm of height makes a face look too large, as a share of 1; null where it is not known.</param>
/// <param name="ScaleWithin">± of all lengths together, as a share of 1.</param>
/// <param name="Picture">The true picture as a data address.</param>
/// <param name="Corner">Its top left corner on the face, mm, y up.</param>
/// <param name="Width">mm.</param>
/// <param name="Height">mm.</param>
public sealed record PhotoShown(
    string Found, double Residual, string Lens, string? Camera, double? LargerPerMm, double ScaleWithin, ImmutableArray<string> Cautions,
    string Picture, Vec2 Corner, double Width, double Height, ImmutableArray<PickShown> Picks);

/// <summary>One thing picked, as a page shows it.</summary>
/// <param name="Size">As in <c>⌀ 8.72 ± 0.06</c>; empty where it has none.</param>
/// <param name="Place">As in <c>12.31, 4.50 ± 0.05</c>; empty for an outline.</param>
/// <param name="Why">Why nothing was found; null when something was.</param>
/// <param name="Path">SVG path over the picture, mm, y down.</param>
/// <param name="At">Where its name is written, mm, y up.</param>
/// <param name="Rows">What it adds to a survey.</param>
public sealed record PickShown(string Name, PickKind Kind, string Size, string Place, string? Why, bool Outside, string Path, Vec2 At, PhotoRows Rows)
{
    public static PickShown Of(TruePhoto photo, PickSeen seen, string frame)
    {
        var rows = PhotoRows.Of(frame, photo, [seen]);
        PickShown Shown(string size, string place, bool outside, string path, Vec2 at) => new(seen.Pick.Name, seen.Pick.Kind, size, place, seen.Why, outside, path, at, rows);
        if (seen.Hole is { } hole)
        {
            var (at, r) = (hole.Centre.At, hole.Diameter.Value / 2);
            return Shown($"⌀ {Mm(hole.Diameter)}", PlaceOf(hole.Centre), hole.Centre.Outside, $"{Circle(at, r)}{Cross(at)}", at + new Vec2(r, r) * 0.75);
        }
        if (seen.Corner is { } corner) return Shown("", PlaceOf(corner), corner.Outside, Cross(corner.At), corner.At);
        if (seen.Outline is { } outline)
        {
            var words = $"{outline.Sides.Count(s => s.Straight)} straight, {outline.Sides.Count(s => !s.Straight)} round";
            return Shown(words, "", outline.Sides.Any(s => s.From.Outside), string.Concat(outline.Sides.Select(Side)), outline.Sides[0].Middle.At);
        }
        var clicked = photo.ToFace(seen.Pick.Clicks[0]);
        return Shown("", "", false, Cross(clicked), clicked);
    }

    static string Side(SideSeen side)
    {
        if (side is not { Centre: { } centre, Radius: { } radius }) return Say($"M{Point(side.From.At)}L{Point(side.To.At)}");
        if (side.From.At.DistanceTo(side.To.At) < 1e-6) return Circle(centre.At, radius.Value);
        // In a picture with y down what turns anticlockwise on the face turns against the flag.
        var turns = (side.Middle.At - side.From.At).Cross(side.To.At - side.Middle.At);
        var large = (side.Middle.At - (side.From.At + side.To.At) * 0.5).Dot((centre.At - (side.From.At + side.To.At) * 0.5)) > 0;
        return Say($"M{Point(side.From.At)}A{radius.Value:0.###} {radius.Value:0.###} 0 {(large ? 1 : 0)} {(turns > 0 ? 0 : 1)} {Point(side.To.At)}");
    }

    static string Circle(Vec2 at, double r) =>
        Say($"M{Point(at - new Vec2(r, 0))}A{r:0.###} {r:0.###} 0 1 0 {Point(at + new Vec2(r, 0))}A{r:0.###} {r:0.###} 0 1 0 {Point(at - new Vec2(r, 0))}");

    static string Cross(Vec2 at) => Say($"M{Point(at - new Vec2(1.5, 0))}h3M{Point(at + new Vec2(0, 1.5))}v3");

    /// <summary>Through the places, y down.</summary>
    internal static string Line(IEnumerable<Vec2> places)
    {
        var path = new StringBuilder();
        foreach (var p in places) path.Append(path.Length == 0 ? 'M' : 'L').Append(Point(p));
        return path.ToString();
    }

    static string Point(Vec2 p) => Say($"{p.X:0.###} {-p.Y:0.###}");

    static string PlaceOf(Spot spot) => Say($"{spot.At.X:0.00}, {spot.At.Y:0.00} ± {2 * spot.Spread.Std:0.00}");

    static string Mm(Uncertain size) => Say($"{size.Value:0.00} ± {size.Expanded:0.00}");

    static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
