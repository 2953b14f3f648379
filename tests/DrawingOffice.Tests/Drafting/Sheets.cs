using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

/// <summary>What the tests ask of a sheet: from its marks alone, by the strokes that are really drawn.</summary>
static class Sheets
{
    public static IEnumerable<TextMark> Texts(Sheet sheet) => sheet.Marks.OfType<TextMark>();

    /// <summary>Two letterings whose drawn strokes' boxes share more than a hair.</summary>
    public static string? Overlap(Sheet sheet)
    {
        var boxes = Texts(sheet).Select(t => (t.Text, Box: Lettering.Bounds(t))).Where(t => t.Box is not null).ToList();
        for (var a = 0; a < boxes.Count; a++)
        {
            for (var b = a + 1; b < boxes.Count; b++)
            {
                var (p, q) = (boxes[a].Box!.Value, boxes[b].Box!.Value);
                if (p.Left < q.Right && q.Left < p.Right && p.Bottom < q.Top && q.Bottom < p.Top) return $"\"{boxes[a].Text}\" on \"{boxes[b].Text}\"";
            }
        }
        return null;
    }

    /// <summary>A figure of a dimension that lies on the outline or on the rim of a hole.</summary>
    public static string? OnOutline(Sheet sheet)
    {
        var lines = sheet.Marks.Where(m => m.Layer is Layers.Outline or Layers.Holes).SelectMany(Chords).ToList();
        foreach (var text in Texts(sheet).Where(t => t.Layer == Layers.Dimensions))
        {
            var box = Lettering.Bounds(text)!.Value;
            if (lines.Exists(l => Crosses(box, l.A, l.B))) return text.Text;
        }
        return null;
    }

    /// <summary>A figure that a dimension line, extension line, leader, bend line or centre line runs through.</summary>
    public static string? Struck(Sheet sheet)
    {
        var lines = sheet.Marks.OfType<LineMark>().Where(m => m.Layer is Layers.Dimensions or Layers.Bends or Layers.Centre).ToList();
        return Texts(sheet).Where(t => t.Layer == Layers.Dimensions)
            .FirstOrDefault(t => Lettering.Bounds(t) is { } box && lines.Exists(l => Crosses(box, l.A, l.B)))?.Text;
    }

    // An end inside, or one of the rectangle's diagonals cut: enough for a rectangle and a straight line.
    static bool Crosses(Box box, Vec2 a, Vec2 b) => box.Holds(a) || box.Holds(b)
        || Cut(a, b, new(box.Left, box.Bottom), new(box.Right, box.Top)) || Cut(a, b, new(box.Left, box.Top), new(box.Right, box.Bottom));

    static bool Cut(Vec2 a, Vec2 b, Vec2 p, Vec2 q) =>
        (b - a).Cross(p - a) * (b - a).Cross(q - a) < 0 && (q - p).Cross(a - p) * (q - p).Cross(b - p) < 0;

    /// <summary>Two level notes of several words in a view, on one line with less than three letter heights between them.</summary>
    public static string? RunTogether(Sheet sheet)
    {
        var notes = Texts(sheet).Where(t => t.Layer == Layers.Dimensions && t.Turn == 0 && t.Text.Contains(' ')).Select(t => (t.Text, Box: Lettering.Bounds(t)!.Value)).ToList();
        var pairs = from a in notes
                    from b in notes
                    where a != b && a.Box.Left <= b.Box.Left && a.Box.Bottom < b.Box.Top && b.Box.Bottom < a.Box.Top && b.Box.Left - a.Box.Right < 3 * 3.5
                    select $"\"{a.Text}\" and \"{b.Text}\"";
        return pairs.FirstOrDefault();
    }

    /// <summary>Lettering that leaves the paper.</summary>
    public static string? OffPaper(Sheet sheet)
    {
        var paper = new Box(0, 0, sheet.Width, sheet.Height);
        return Texts(sheet).FirstOrDefault(t => Lettering.Bounds(t) is { } box && !paper.Holds(box))?.Text;
    }

    static IEnumerable<(Vec2 A, Vec2 B)> Chords(Mark mark)
    {
        switch (mark)
        {
            case LineMark m:
                return [(m.A, m.B)];
            case ArcMark m:
                return Round(m.Centre, m.Radius, m.Start, m.Sweep);
            case CircleMark m:
                return Round(m.Centre, m.Radius, 0, 2 * Math.PI);
            default:
                return [];
        }
    }

    static IEnumerable<(Vec2 A, Vec2 B)> Round(Vec2 centre, double radius, double start, double sweep) =>
        Enumerable.Range(0, 48).Select(i => (centre + Vec2.Polar(start + sweep * i / 48, radius), centre + Vec2.Polar(start + sweep * (i + 1) / 48, radius)));

    /// <summary>A part as it could come off a bench: plates, brackets, discs; up to 14 holes, some slots and folds.</summary>
    public static FlatPart Invented(uint seed)
    {
        var chance = new Chance(seed);
        var (w, h) = (chance.Uniform(15, 330), chance.Uniform(15, 220));
        var shape = chance.Below(5);
        var loop = shape switch
        {
            0 => Parts.Polygon(new(0, 0), new(w, 0), new(w, h), new(0, h)),
            1 => Parts.Rounded(w, h, Math.Min(w, h) * chance.Uniform(0.05, 0.4)),
            2 => Parts.Polygon(new(0, 0), new(w, 0), new(w, h * chance.Uniform(0.2, 0.8)), new(w * chance.Uniform(0.2, 0.8), h * 0.9), new(w * 0.1, h), new(0, h * 0.7)),
            3 => Parts.Polygon(new(0, 0), new(w * 0.7, 0), new(w * 0.7, h * 0.3), new(w, h * 0.3), new(w, h), new(w * 0.2, h), new(w * 0.2, h * 0.6), new(0, h * 0.6)),
            _ => [new ArcSegment(new(w / 2, 0), new(w / 2, 0), Vec2.Zero, 2 * Math.PI)],
        };
        Vec2 Place() => shape == 4 ? Vec2.Polar(chance.Uniform(0, 6.3), w * chance.Uniform(0, 0.4)) : new(w * chance.Uniform(0.1, 0.9), h * chance.Uniform(0.1, 0.9));
        Sized Size(double value) => new(value, chance.Below(2) == 0 ? 0.02 : null, chance.Below(4) == 0 ? "5/16 in" : null);
        var holes = Enumerable.Range(0, chance.Below(15)).Select(i => new RoundHole($"Hole-{i}", Place(), Size(chance.Uniform(2, Math.Min(w, h) / 4)))).ToList();
        var slots = Enumerable.Range(0, chance.Below(3)).Select(i => new LongHole($"Slot-{i}", Place(), chance.Uniform(0, 3), Size(chance.Uniform(2, 8)), Size(chance.Uniform(0, 20)))).ToList();
        return new([loop])
        {
            Holes = [.. holes],
            Slots = [.. slots],
            Folds = [.. Enumerable.Range(0, chance.Below(3)).Select(i => new FoldLine(new(0, h * 0.2 * (i + 1)), new(w * 0.9, h * 0.2 * (i + 1)), chance.Uniform(-2, 2), 2))],
            Datum = chance.Below(3) switch { 0 => null, 1 => new(Vec2.Zero, "C1"), _ => holes.Count > 0 ? new(holes[0].Centre, holes[0].Id) : null },
        };
    }
}
