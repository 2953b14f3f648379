using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>Angles at the corners that are not square.</summary>
static class Angles
{
    /// <summary>A corner this close to square is meant square, radians (half a degree).</summary>
    public const double Square = Math.PI / 360;

    /// <summary>Angles follow from the corners' places; past this many they only crowd the view.</summary>
    public const int Most = 6;

    /// <summary>Corners worth an angle, and the angle between their edges, radians in (0, π).</summary>
    public static IEnumerable<(Outlines.Corner Corner, double Angle)> Of(FlatPart part)
    {
        foreach (var corner in part.Loops.SelectMany(l => Outlines.Corners(l)))
        {
            var angle = Math.Acos(Math.Clamp((-corner.Into).Dot(corner.OutOf), -1, 1));
            if (corner.Fillet is null && NearCurve(part, corner)) continue;
            if (Math.Abs(angle - Math.PI / 2) > Square && angle > Square && angle < Math.PI - Square) yield return (corner, angle);
        }
    }

    // Where a straight edge runs into an arc there is an angle, but nobody sets it out.
    static bool NearCurve(FlatPart part, Outlines.Corner corner) =>
        part.Loops.SelectMany(l => l).OfType<ArcSegment>().Any(a => a.From == corner.At || a.To == corner.At);

    public static void Draw(Board board, Outlines.Corner corner, double angle, double scale, Label label)
    {
        var (apex, a, b) = (corner.At * scale, -corner.Into, corner.OutOf);
        var start = a.Cross(b) > 0 ? a : b;
        var least = corner.Fillet is { } fillet ? corner.At.DistanceTo(fillet.From) * scale + 2 : 0;
        var middle = start.Turned(angle / 2);
        double[] radii = [.. new[] { 8.0, 11, 14, 18, 6, 4.5 }.Select(r => Math.Max(r, least)).Where(r => Passes(board, apex, start, angle, r))];
        foreach (var radius in radii)
        {
            var box = label.Around(Vec2.Zero, 0);
            var reach = Math.Abs(middle.X) * box.Width / 2 + Math.Abs(middle.Y) * box.Height / 2;
            foreach (var past in new[] { 1.0, 3 })
            {
                var at = apex + middle * (radius + reach + past) - box.Middle;
                if (!label.Stands(board, at, apart: true)) continue;
                Sweep(board, apex, start, angle, radius);
                label.Draw(board, at, 0);
                return;
            }
        }
        var last = radii.FirstOrDefault(Math.Max(8, least));
        Sweep(board, apex, start, angle, last);
        Leader.Led(board, apex + middle * last, 0, label, [.. Leader.Along(middle.Angle), .. Leader.EveryWay]);
    }

    static List<Vec2> Points(Vec2 apex, Vec2 start, double angle, double radius) =>
        [.. Enumerable.Range(0, 13).Select(i => apex + start.Turned(angle * i / 12) * radius)];

    static bool Passes(Board board, Vec2 apex, Vec2 start, double angle, double radius)
    {
        var points = Points(apex, start, angle, radius);
        return points.Zip(points.Skip(1)).All(p => board.Clear.Passes(p.First, p.Second));
    }

    static void Sweep(Board board, Vec2 apex, Vec2 start, double angle, double radius)
    {
        board.Add(new ArcMark(apex, radius, start.Angle, angle, Layers.Dimensions, Stroke.Dimension));
        board.Clear.Chain(Points(apex, start, angle, radius), closed: false);
        if (angle * radius < 3 * Board.ArrowLength) return;
        // An arrow head lies along its chord, not along the tangent at its tip.
        var lean = Board.ArrowLength / radius / 2;
        board.Arrow(apex + start * radius, (-start.Left).Turned(lean));
        var end = start.Turned(angle);
        board.Arrow(apex + end * radius, end.Left.Turned(-lean));
    }
}
