using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Drafting.Picture;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>How a solid is to be looked at.</summary>
/// <param name="Sight">From where; its scale is chosen to fit.</param>
/// <param name="Hide">Dash what faces hide; else all lines stand as a wireframe.</param>
/// <param name="Between">Pairs of features joined by a line, with a word and a tone: doubtful readings, the next reading.</param>
/// <param name="Width">mm.</param>
/// <param name="Height">mm.</param>
public sealed record SolidPictureOptions(Sight Sight, bool Hide, ImmutableArray<(string From, string? To, string Word, Tone Tone)> Between, double Width = 180, double Height = 130)
{
    public static SolidPictureOptions Wireframe { get; } = new(Sight.Isometric, false, []);

    public static SolidPictureOptions Pictorial { get; } = new(Sight.Isometric, true, []);
}

/// <summary>A solid as one picture for page and paper: every feature with its name, what is loose dashed, readings between features, a scale bar where one holds.</summary>
public static class SolidPicture
{
    const double Margin = 12, Legend = 14;

    /// <exception cref="RefusedException">The picture is too small, or nothing of the part has a place.</exception>
    public static Sheet Draw(SolidPart part, SolidPictureOptions options)
    {
        if (!(options.Width >= 60 && options.Height >= 60)) throw new RefusedException(Refusal.Of("picture size", $"{options.Width} × {options.Height} mm", "at least 60 × 60 mm is needed"));
        var places = part.Extent.Select((options.Sight with { Scale = 1 }).At).ToList();
        if (places.Count == 0) throw new RefusedException(Refusal.Of("part", part.Title, "at least one corner, edge or hole is needed"));
        var view = View.Fitting(Box.Round(places), new(Margin, Margin + Legend, options.Width - Margin, options.Height - Margin));
        var sight = options.Sight with { Scale = view.Scale };
        var board = new Board();
        Vec2 At(Vec3 p) => sight.At(p) + view.Shift;
        foreach (var mark in SolidWires.Draw(part, sight, options.Hide)) Put(board, Shift.By(mark, view.Shift));
        foreach (var p in part.Points.Where(p => p.Loose)) board.Circle(At(p.At), 1.2, Layers.Outline, Stroke.Hidden, Tone.Warn);
        var where = Where(part);
        foreach (var (from, to, word, tone) in options.Between)
        {
            if (!where.TryGetValue(from, out var a)) continue;
            var b = to is not null && where.TryGetValue(to, out var other) ? other : a;
            board.Line(At(a), At(b), Layers.Dimensions, Stroke.Dimension, tone);
            Leader.Beside(board, (At(a) + At(b)) / 2, 0.6, new(word, Tone: tone));
        }
        foreach (var f in part.Faces) Leader.Beside(board, At(f.At), 0.2, new($"face {f.Id}", Tone: f.Loose ? Tone.Warn : Tone.Accent));
        foreach (var r in part.Rounds) Leader.Beside(board, At(r.Centre), SolidPart.Radius(r) * view.Scale, new(r.Id, Tone: Toned(r.Loose)));
        foreach (var p in part.Points) Leader.Beside(board, At(p.At), 0.8, new(p.Id, Tone: Toned(p.Loose)));
        Foot(board, part, view, options);
        return new(part.Title, options.Width, options.Height, board.Marks);
    }

    /// <summary>The lines alone with the names of the faces, for a corner of a drawing; null bounds where there is nothing to see.</summary>
    internal static (ImmutableArray<Mark> Marks, Box? Bounds) Bare(SolidPart part, Sight sight, bool hide)
    {
        var board = new Board();
        foreach (var mark in SolidWires.Draw(part, sight, hide)) Put(board, mark);
        foreach (var f in part.Faces) Leader.Beside(board, sight.At(f.At), 0.2, new(f.Id, Tone: Tone.Accent));
        return (board.Marks, board.Marks.IsEmpty ? null : board.Clear.Bounds);
    }

    internal static void Put(Board board, Mark mark)
    {
        board.Add(mark);
        if (mark is LineMark line) board.Clear.Line(line.A, line.B);
        else if (mark is CircleMark circle) board.Clear.Disc(circle.Centre, circle.Radius);
        else if (mark is EllipseMark ellipse) board.Clear.Disc(ellipse.Centre, ellipse.HalfB);
        else if (mark is PathMark path) board.Clear.Chain(path.Points, path.Closed);
    }

    /// <summary>Where the line of a reading begins or ends.</summary>
    static Dictionary<string, Vec3> Where(SolidPart part) => new(
    [
        .. part.Points.Select(p => KeyValuePair.Create(p.Id, p.At)), .. part.Lines.Select(l => KeyValuePair.Create(l.Id, (l.A + l.B) / 2)),
        .. part.Rounds.Select(r => KeyValuePair.Create(r.Id, r.Centre)), .. part.Faces.Select(f => KeyValuePair.Create(f.Id, f.At)),
    ]);

    static Tone Toned(bool loose) => loose ? Tone.Warn : Tone.Ink;

    static void Foot(Board board, SolidPart part, View view, SolidPictureOptions options)
    {
        string[] loose = [.. part.Points.Where(p => p.Loose).Select(p => p.Id), .. part.Rounds.Where(r => r.Loose).Select(r => r.Id), .. part.Faces.Where(f => f.Loose).Select(f => $"face {f.Id}")];
        var scale = string.Create(CultureInfo.InvariantCulture, $"Drawn to fit, {view.Scale:0.##} to 1. {(options.Hide ? "Dashed: behind a face." : "Wireframe: nothing is hidden.")}");
        board.Text(new(Margin, 10), Letter.Cut(scale, options.Width - 2 * Margin, Letter.Small), Letter.Small, Layers.Frame, tone: Tone.Quiet);
        if (loose.Length > 0) board.Text(new(Margin, 5), Letter.Cut($"Not held by the readings: {string.Join(", ", loose)}.", options.Width - 2 * Margin, Letter.Small), Letter.Small, Layers.Frame, tone: Tone.Warn);
    }
}
