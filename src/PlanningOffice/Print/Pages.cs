using System.Collections.Immutable;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.PlanningOffice.Print;

/// <summary>
/// Lines of text and boxes set down A4 pages from the top; a block that does not fit begins a new page. Lettering heights
/// are those of ISO 3098: 2.5, 3.5, 5 mm.
/// </summary>
sealed class Pages(string title)
{
    /// <summary>Room for the punch on the left, mm.</summary>
    public const double Left = 22;

    public const double Right = 198;

    const double Top = 283, Bottom = 16;

    readonly List<List<Mark>> _pages = [[]];

    /// <summary>Where the next line's top stands, mm from the bottom of the sheet.</summary>
    public double Y { get; private set; } = Top;

    public void Space(double mm) => Y -= mm;

    /// <summary>Begins a new page unless so much room is left.</summary>
    public void Need(double mm)
    {
        if (Y - mm >= Bottom) return;
        _pages.Add([]);
        Y = Top;
    }

    /// <summary>Sets wrapped text and moves down below it.</summary>
    public void Text(string text, double height, double from = Left, double to = Right, Tone tone = Tone.Ink)
    {
        foreach (var line in Wrap(text, height, to - from))
        {
            Need(Line(height));
            Put(new TextMark(new(from, Y - height), line, height, Layers.Text, Tone: tone));
            Y -= Line(height);
        }
    }

    /// <summary>Sets one line at the present height without moving down.</summary>
    public void Beside(string text, double height, double at, Anchor anchor = Anchor.Left, Tone tone = Tone.Ink) =>
        Put(new TextMark(new(at, Y - height), text, height, Layers.Text, anchor, Tone: tone));

    public void Rule(Stroke stroke) => Put(new LineMark(new(Left, Y), new(Right, Y), Layers.Frame, stroke));

    public void Put(Mark mark) => _pages[^1].Add(mark);

    /// <summary>The height wrapped text takes, mm.</summary>
    public static double HeightOf(string text, double height, double width) => Wrap(text, height, width).Count * Line(height);

    public ImmutableArray<Sheet> Sheets() =>
        [.. _pages.Select((marks, i) => new Sheet(title, PaperSize.A4.Width, PaperSize.A4.Height, [.. marks, .. Foot(i + 1)]))];

    IEnumerable<Mark> Foot(int number) =>
    [
        new TextMark(new(Left, 8), title, 2.5, Layers.Frame, Tone: Tone.Quiet),
        new TextMark(new(Right, 8), $"sheet {number} of {_pages.Count}", 2.5, Layers.Frame, Anchor.Right, Tone: Tone.Quiet),
    ];

    /// <summary>ISO 3098 type B: lines of text stand 1.7 lettering heights apart.</summary>
    static double Line(double height) => 1.7 * height;

    /// <summary>Words as many as fit; a word longer than the line stands alone and overhangs.</summary>
    static List<string> Wrap(string text, double height, double width)
    {
        var lines = new List<string>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = lines.Count > 0 ? $"{lines[^1]} {word}" : word;
            if (lines.Count > 0 && Lettering.Width(longer, height) <= width) lines[^1] = longer;
            else lines.Add(word);
        }
        return lines;
    }
}
