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

    /// <param name="list">Strips no higher than a half page has room for.</param>
    /// <param name="upper">Whose the upper copy is.</param>
    public static ImmutableArray<Sheet> Sheets(string title, ListStrips list, string upper, string lower)
    {
        var pages = Pages(list);
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

    static List<List<PrintedLine>> Pages(ListStrips list)
    {
        var room = Half - 2 * Margin - Foot;
        var (pages, left) = (new List<List<PrintedLine>> { ([]) }, room);
        void Flow(IEnumerable<PrintedLine> strips, ImmutableArray<PrintedLine> again)
        {
            foreach (var strip in strips)
            {
                if (strip.Height > left)
                {
                    pages.Add([.. again]);
                    left = room - again.Sum(a => a.Height);
                }
                pages[^1].Add(strip);
                left -= strip.Height;
            }
        }
        Flow(list.Opening.Concat(list.Head), []);
        Flow(list.Rows, list.Head);
        Flow(list.Closing, []);
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

/// <param name="Head">Of the table; again where its rows go on to another page.</param>
sealed record ListStrips(IEnumerable<PrintedLine> Opening, ImmutableArray<PrintedLine> Head, IEnumerable<PrintedLine> Rows, IEnumerable<PrintedLine> Closing);
