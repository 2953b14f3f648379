using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Drafting.Solid;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Forms;

/// <summary>One line of the list as printed.</summary>
public sealed record TakingRow(string Number, string Kind, string From, string To, string About);

/// <summary>Readings taken with one tool held one way, in order.</summary>
public sealed record TakingGroup(string Title, ImmutableArray<TakingRow> Rows);

/// <summary>
/// The taking sheet, upright A4: the sketch with every feature named on a leader, then the readings to take with an empty box
/// for each, tool by tool. It is filled in top to bottom.
/// </summary>
public static class TakingSheet
{
    const double SketchHeight = 96, SolidHeight = 118, Pitch = 7.5, Leader = 9, HeadHeight = 20;

    static readonly PaperSize Paper = PaperSize.A4;

    static Box Room => Frame.Inside(Paper).Grown(-6);

    static double Top => Room.Top - HeadHeight;

    /// <param name="words">Sentences that stand at the end of the list.</param>
    public static ImmutableArray<PrintRoom.Sheet> Draw(Sample sample, ImmutableArray<TakingGroup> groups, ImmutableArray<string> words) =>
        Draw(sample.Id, sample.Title, SketchHeight, (board, box) => Sketch(board, sample, box), groups, words);

    /// <summary>The same for a part in space: its sketch is seen from above, right and front.</summary>
    /// <param name="part">As sketched; empty: no picture.</param>
    public static ImmutableArray<PrintRoom.Sheet> Draw(string id, SolidPart part, ImmutableArray<TakingGroup> groups, ImmutableArray<string> words) =>
        Draw(id, part.Title, part.Points.IsEmpty && part.Rounds.IsEmpty ? 0 : SolidHeight, (board, box) => Pictorial(board, part, box), groups, words);

    static void Pictorial(Board board, SolidPart part, Box box)
    {
        var picture = SolidPicture.Draw(part, SolidPictureOptions.Wireframe with { Width = box.Width, Height = box.Height });
        foreach (var mark in picture.Marks) board.Add(Shift.By(mark, new(box.Left, box.Bottom)));
    }

    static ImmutableArray<PrintRoom.Sheet> Draw(string id, string title, double high, Action<Board, Box> sketch, ImmutableArray<TakingGroup> groups, ImmutableArray<string> words)
    {
        var pages = new List<Board>();
        var (board, y) = (NewPage(), Top - high - 6);
        if (high > 0) sketch(board, new Box(Room.Left, Top - high, Room.Right, Top));
        foreach (var group in groups)
        {
            var table = TableOf(group);
            while (table.Rows.Length > 0)
            {
                var (now, later) = table.Cut(y - Room.Bottom);
                if (now.Rows.Length == 0)
                {
                    (board, y) = (NewPage(), Top);
                    (now, later) = table.Cut(y - Room.Bottom);
                }
                now.Draw(board, new(Room.Left, y));
                y -= now.Height + 4;
                table = later;
            }
        }
        foreach (var line in words.SelectMany(w => Letter.Lines(w, Room.Width, Letter.Small)))
        {
            if (y < Room.Bottom + 5) (board, y) = (NewPage(), Top);
            board.Text(new(Room.Left, y - 4), line, Letter.Small, tone: Tone.Quiet);
            y -= 4.5;
        }
        for (var i = 0; i < pages.Count; i++) Head(pages[i], id, title, i + 1, pages.Count);
        return [.. pages.Select((p, i) => new PrintRoom.Sheet(string.Create(CultureInfo.InvariantCulture, $"Taking sheet {id} {i + 1}"), Paper.Width, Paper.Height, p.Marks))];

        Board NewPage()
        {
            pages.Add(new Board());
            return pages[^1];
        }
    }

    static Table TableOf(TakingGroup group) => new(
        group.Title,
        [new("no.", Anchor.Right, 10), new("reading", Least: 44), new("from", Least: 16), new("to", Least: 16), new("about", Anchor.Right, 20), new("value as written", Least: 38), new("note", Least: 22)],
        [.. group.Rows.Select(r => (ImmutableArray<string>)[r.Number, r.Kind, r.From, r.To, r.About, "", ""])],
        Pitch);

    static void Head(Board board, string id, string title, int sheet, int of)
    {
        board.Rectangle(Frame.Inside(Paper), Layers.Frame, Stroke.Outline);
        board.Text(new(Room.Left, Room.Top - 5), "Taking sheet", 5);
        board.Text(new(Room.Right, Room.Top - 5), string.Create(CultureInfo.InvariantCulture, $"{sheet} of {of}"), Letter.Usual, anchor: Anchor.Right);
        board.Text(new(Room.Left, Room.Top - 13), Letter.Cut($"{id}  {title}", Room.Width * 0.6, Letter.Usual), Letter.Usual);
        board.Text(new(Room.Left + Room.Width * 0.62, Room.Top - 13), "date, taken by", Letter.Small, tone: Tone.Quiet);
        board.Line(new(Room.Left + Room.Width * 0.79, Room.Top - 13.5), new(Room.Right, Room.Top - 13.5), Layers.Frame, Stroke.Thin);
    }

    static void Sketch(Board board, Sample sample, Box box)
    {
        var at = sample.Features.Where(f => f.Sketch is not null).ToDictionary(f => f.Id, f => f.Sketch!.Value);
        if (at.Count == 0) return;
        var around = Box.Round(sample.Features.Where(f => at.ContainsKey(f.Id)).SelectMany(Corners));
        var scale = Math.Min((box.Width - 4 * Leader) / Math.Max(1, around.Width), (box.Height - 3 * Leader) / Math.Max(1, around.Height));
        var (from, to) = (new Vec2((around.Left + around.Right) / 2, (around.Bottom + around.Top) / 2), new Vec2((box.Left + box.Right) / 2, (box.Bottom + box.Top) / 2));
        Vec2 Put(Vec2 p) => to + scale * (p - from);
        foreach (var f in sample.Features) Outline(board, f, at, Put, scale, Math.Max(around.Width, around.Height));
        var labels = new List<Box>();
        foreach (var f in sample.Features)
            if (Anchorage(f, at) is { } place) Label(board, f.Id, Put(place), to, RadiusOf(f) * scale, labels);
    }

    static IEnumerable<Vec2> Corners(Feature f)
    {
        var (p, r) = (f.Sketch!.Value, RadiusOf(f));
        return [p + new Vec2(r, r), p - new Vec2(r, r)];
    }

    static double RadiusOf(Feature f) => f.Kind switch
    {
        FeatureKind.Hole => (f.SketchSize ?? 6) / 2,
        FeatureKind.Slot => (f.SketchLength ?? 10) / 2 + (f.SketchSize ?? 6) / 2,
        FeatureKind.Arc => f.SketchSize ?? 6,
        _ => 0,
    };

    static Vec2? Anchorage(Feature f, Dictionary<string, Vec2> at) =>
        f.Sketch ?? (f.From is { } a && f.To is { } b && at.TryGetValue(a, out var p) && at.TryGetValue(b, out var q) ? (p + q) / 2 : null);

    static void Outline(Board board, Feature f, Dictionary<string, Vec2> at, Func<Vec2, Vec2> put, double scale, double size)
    {
        var along = Vec2.Polar(f.SketchTurn ?? 0);
        switch (f.Kind)
        {
            case FeatureKind.Hole:
                board.Circle(put(f.Sketch!.Value), RadiusOf(f) * scale, Layers.Holes, Stroke.Outline);
                break;
            case FeatureKind.Arc:
                board.Circle(put(f.Sketch!.Value), RadiusOf(f) * scale, Layers.Outline, Stroke.Thin);
                break;
            case FeatureKind.Slot:
                var (half, radius) = ((f.SketchLength ?? 10) / 2, (f.SketchSize ?? 6) / 2);
                foreach (var side in new[] { radius, -radius })
                    board.Line(put(f.Sketch!.Value - half * along + side * along.Left), put(f.Sketch!.Value + half * along + side * along.Left), Layers.Holes, Stroke.Outline);
                board.Add(new ArcMark(put(f.Sketch!.Value + half * along), radius * scale, along.Angle - Math.PI / 2, Math.PI, Layers.Holes, Stroke.Outline));
                board.Add(new ArcMark(put(f.Sketch!.Value - half * along), radius * scale, along.Angle + Math.PI / 2, Math.PI, Layers.Holes, Stroke.Outline));
                break;
            case FeatureKind.Edge when f.From is { } a && f.To is { } b:
                if (at.TryGetValue(a, out var p) && at.TryGetValue(b, out var q)) board.Line(put(p), put(q), Layers.Outline, Stroke.Outline);
                break;
            case FeatureKind.Edge:
                board.Line(put(f.Sketch!.Value - size / 3 * along), put(f.Sketch!.Value + size / 3 * along), Layers.Outline, Stroke.Outline);
                break;
            default:
                board.Line(put(f.Sketch!.Value) - new Vec2(1.2, 0), put(f.Sketch!.Value) + new Vec2(1.2, 0), Layers.Outline, Stroke.Outline);
                board.Line(put(f.Sketch!.Value) - new Vec2(0, 1.2), put(f.Sketch!.Value) + new Vec2(0, 1.2), Layers.Outline, Stroke.Outline);
                break;
        }
    }

    /// <summary>A name at the end of a leader: outward first, then round about until it meets no other name.</summary>
    static void Label(Board board, string id, Vec2 at, Vec2 middle, double radius, List<Box> labels)
    {
        var outward = (at - middle).Length < 1 ? Math.PI / 3 : (at - middle).Angle;
        Box? last = null;
        var end = at;
        for (var turn = 0; turn < 12; turn++)
        {
            var angle = outward + (turn % 2 == 0 ? 1 : -1) * ((turn + 1) / 2) * Math.PI / 6;
            end = at + (radius + Leader) * Vec2.Polar(angle);
            var half = Letter.Width(id, Letter.Usual) / 2 + 1;
            var box = new Box(end.X - half, end.Y - 2.8, end.X + half, end.Y + 2.8);
            last ??= box;
            if (labels.Any(l => l.Meets(box))) continue;
            last = box;
            break;
        }
        labels.Add(last!.Value);
        var away = (end - at).Unit;
        board.Line(at + radius * away, end - 3 * away, Layers.Dimensions, Stroke.Thin, Tone.Quiet);
        board.Text(new(end.X, end.Y - Letter.Usual / 2), id, Letter.Usual, anchor: Anchor.Middle);
    }
}
