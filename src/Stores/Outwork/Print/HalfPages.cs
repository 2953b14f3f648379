using System.Collections.Immutable;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.Stores.Outwork.Print;

/// <summary>Two copies of a list on A4, one above the other, with a line to cut along between them.</summary>
static class HalfPages
{
    public const double Left = 14, Right = 196;

    const double Margin = 9, Foot = 7;

    static double Half => PaperSize.A4.Height / 2;

    /// <param name="head">Again on top of every page.</param>
    /// <param name="body">Strips no higher than a half page has room for.</param>
    /// <param name="upper">Whose the upper copy is.</param>
    public static ImmutableArray<Sheet> Sheets(string title, ImmutableArray<PrintedLine> head, IEnumerable<PrintedLine> body, string upper, string lower)
    {
        var pages = Pages(head, body);
        return
        [
            .. pages.Select((lines, i) => new Sheet(title, PaperSize.A4.Width, PaperSize.A4.Height,
            [
                .. Copy(lines, PaperSize.A4.Height, $"{upper}; {title}; sheet {i + 1} of {pages.Count}"),
                .. Copy(lines, Half, $"{lower}; {title}; sheet {i + 1} of {pages.Count}"),
                new LineMark(new(0, Half), new(PaperSize.A4.Width, Half), Layers.Frame, Stroke.Hidden),
                new TextMark(new(PaperSize.A4.Width / 2, Half + 1), "cut here", 2.5, Layers.Text, Anchor.Middle, Tone: Tone.Quiet),
            ])),
        ];
    }

    static List<List<PrintedLine>> Pages(ImmutableArray<PrintedLine> head, IEnumerable<PrintedLine> body)
    {
        var room = Half - 2 * Margin - Foot - head.Sum(h => h.Height);
        var (pages, left) = (new List<List<PrintedLine>> { ([.. head]) }, room);
        foreach (var line in body)
        {
            if (line.Height > left)
            {
                pages.Add([.. head]);
                left = room;
            }
            pages[^1].Add(line);
            left -= line.Height;
        }
        return pages;
    }

    static IEnumerable<Mark> Copy(List<PrintedLine> lines, double top, string foot)
    {
        var y = top - Margin;
        foreach (var line in lines)
        {
            foreach (var mark in line.Marks(y)) yield return mark;
            y -= line.Height;
        }
        yield return new TextMark(new(Left, top - Half + Margin), foot, 2.5, Layers.Text, Tone: Tone.Quiet);
    }
}
