using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Pieces.Sheets;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;

namespace WitnessMark.DrawingOffice.Pieces.Nesting;

/// <summary>A stock sheet at 1:1 with its pieces where they are cut, each with its name, and a line where the offcut begins.</summary>
public static class NestSheet
{
    public static Sheet ToSheet(this NestedSheet nested, string title)
    {
        var (width, height) = (Math.Max(nested.Size.Width, nested.Size.Height), Math.Min(nested.Size.Width, nested.Size.Height));
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(new PathMark([new(0, 0), new(width, 0), new(width, height), new(0, height)], Closed: true, Filled: false, Layers.Frame, Stroke.Thin));
        foreach (var laid in nested.Pieces)
        {
            var piece = laid.Piece.Moved(laid.Pose);
            marks.AddRange(PieceSheet.Marks(piece));
            if (Name(piece, laid.TurnedOver, height) is { } name) marks.Add(name);
        }
        if (nested.Used < width - 1) marks.Add(new LineMark(new(nested.Used, 0), new(nested.Used, height), Layers.Frame, Stroke.Hidden, Tone.Quiet));
        return new(title, width, height, marks.ToImmutable());
    }

    /// <summary>"Mild steel 1.2 mm, 1000 × 500: 7 pieces, 812 mm used".</summary>
    public static string Words(this NestedSheet nested) => string.Create(CultureInfo.InvariantCulture,
        $"{nested.Thickness:0.##} mm sheet {nested.Size.Name}: {nested.Pieces.Length} {(nested.Pieces.Length == 1 ? "piece" : "pieces")}, {nested.Used:0} mm of its length used");

    /// <summary>In the middle of the piece's metal, as large as it may be seen on a small picture, never wider than the piece.</summary>
    static TextMark? Name(Piece piece, bool turnedOver, double sheet)
    {
        var points = piece.Outline.Flatten(0.1);
        var words = turnedOver ? $"{piece.Name}, other hand" : piece.Name;
        var (at, room, upright) = Roomiest(points);
        var widest = Lettering.Width(words, 1);
        var tall = Math.Min(Math.Min(sheet / 25, 0.85 * room.Length / widest), 0.6 * room.Depth);
        return tall < 1.8 ? null : new(upright ? at + new Vec2(tall / 2, 0) : at - new Vec2(0, tall / 2), words, tall, Layers.Text, Anchor.Middle, upright ? Math.PI / 2 : 0);
    }

    /// <summary>The middle of the longest stretch of metal on the lines through the middle of the piece, level or upright.</summary>
    static (Vec2 At, (double Length, double Depth) Room, bool Upright) Roomiest(ImmutableArray<Vec2> points)
    {
        var (left, right, low, high) = (points.Min(p => p.X), points.Max(p => p.X), points.Min(p => p.Y), points.Max(p => p.Y));
        var best = (At: points[0], Room: (Length: 0.0, Depth: 0.0), Upright: false);
        foreach (var upright in new[] { false, true })
            foreach (var share in new[] { 0.5, 0.25, 0.75, 0.1, 0.9 })
            {
                var level = upright ? left + share * (right - left) : low + share * (high - low);
                var cuts = Cuts(points, level, upright);
                for (var k = 0; k + 1 < cuts.Count; k += 2)
                {
                    var (length, middle) = (cuts[k + 1] - cuts[k], (cuts[k] + cuts[k + 1]) / 2);
                    if (length <= best.Room.Length * 1.05) continue;
                    var at = upright ? new Vec2(level, middle) : new(middle, level);
                    best = (at, (length, Depth(points, at, upright)), upright);
                }
            }
        return best;
    }

    static List<double> Cuts(ImmutableArray<Vec2> points, double level, bool upright)
    {
        var cuts = new List<double>();
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            var (a, b) = upright ? (new Vec2(points[j].Y, points[j].X), new Vec2(points[i].Y, points[i].X)) : (points[j], points[i]);
            if ((a.Y > level) != (b.Y > level)) cuts.Add(a.X + (b.X - a.X) * (level - a.Y) / (b.Y - a.Y));
        }
        cuts.Sort();
        return cuts;
    }

    static double Depth(ImmutableArray<Vec2> points, Vec2 at, bool upright)
    {
        var cuts = Cuts(points, upright ? at.Y : at.X, !upright);
        var here = upright ? at.X : at.Y;
        for (var k = 0; k + 1 < cuts.Count; k += 2)
            if (cuts[k] <= here && here <= cuts[k + 1]) return 2 * Math.Min(here - cuts[k], cuts[k + 1] - here);
        return 0;
    }
}
