using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>Room that lettering takes, and lettering made to fit a room.</summary>
static class Letter
{
    /// <summary>Capital heights, mm, largest first: the smaller end of the range in ISO 3098-0.</summary>
    public static readonly double[] Heights = [7, 5, 3.5, 2.5];

    public const double Small = 2.5;

    public const double Usual = 3.5;

    public static double Width(string text, double height) => Lettering.Width(text, height) + Lettering.Pen * height;

    /// <summary>The rectangle round upright or quarter-turned lettering, with tails and accents.</summary>
    public static Box Around(TextMark mark)
    {
        var width = Width(mark.Text, mark.Height);
        var left = mark.Anchor switch { Anchor.Left => 0, Anchor.Middle => -width / 2, _ => -width };
        Vec2[] corners = [new(left, -0.35 * mark.Height), new(left + width, 1.1 * mark.Height)];
        return Box.Round(corners.Select(c => mark.At + c.Turned(mark.Turn)));
    }

    /// <summary>The largest lettering height, no larger than wanted, at which the text fits; the smallest when none does.</summary>
    public static double HeightFor(string text, double width, double wanted) =>
        Heights.Where(h => h <= wanted).FirstOrDefault(h => Width(text, h) <= width, Small);

    /// <summary>Words set in lines no wider than the room. A word too long for a line is broken, never dropped.</summary>
    public static List<string> Lines(string text, double width, double height)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            if (line.Length > 0 && Width(line + " " + rest, height) <= width)
            {
                line += " " + rest;
                continue;
            }
            if (line.Length > 0) lines.Add(line);
            while (rest.Length > 1 && Width(rest, height) > width)
            {
                var n = Math.Max(1, Enumerable.Range(1, rest.Length).Last(k => k == 1 || Width(rest[..k], height) <= width));
                lines.Add(rest[..n]);
                rest = rest[n..];
            }
            line = rest;
        }
        if (line.Length > 0) lines.Add(line);
        return lines;
    }

    /// <summary>The text cut to the room with "…" where it had to be.</summary>
    public static string Cut(string text, double width, double height)
    {
        if (Width(text, height) <= width) return text;
        var n = text.Length;
        while (n > 0 && Width(text[..n] + "…", height) > width) n--;
        return text[..n].TrimEnd() + "…";
    }
}
