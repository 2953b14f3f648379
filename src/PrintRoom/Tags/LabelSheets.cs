using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Tags;

/// <summary>What one label says.</summary>
/// <param name="Scanned">What a camera reads: an address, or <c>WM:</c> and the code.</param>
/// <param name="Code">The same for eyes; a dash is where it may be broken.</param>
/// <param name="Title">What it is.</param>
/// <param name="Remark">Whose, which side, how many; may be empty.</param>
public sealed record Label(string Scanned, string Code, string Title, string Remark);

/// <summary>Labels set out on sheets of labels.</summary>
public static class LabelSheets
{
    /// <summary>Kept clear at a label's edge, mm: printers shift.</summary>
    const double Edge = 1.2;

    /// <summary>Largest code, mm with its quiet zone.</summary>
    const double LargestCode = 30;

    /// <summary>ISO 3098 type B: lines of text stand 1.7 lettering heights apart.</summary>
    const double Leading = 1.7;

    /// <param name="start">The first free label of the first sheet, from 1: a begun sheet is used up.</param>
    /// <exception cref="RefusedException">Nothing to print, a start off the sheet, or a label too small for its code.</exception>
    public static ImmutableArray<Sheet> Draw(IReadOnlyList<Label> labels, LabelGrid grid, int start = 1)
    {
        if (labels.Count == 0) throw new RefusedException(Refusal.Of("labels", null, "choose at least one thing to print a tag for"));
        if (start < 1 || start > grid.Count) throw new RefusedException(Refusal.Of("first label", $"{start}", $"this sheet holds labels 1 to {grid.Count}"));
        return
        [
            .. labels.Select((label, i) => (label, At: start - 1 + i)).GroupBy(l => l.At / grid.Count)
                .Select(sheet => new Sheet($"Tags, sheet {sheet.Key + 1}", grid.Paper.Width, grid.Paper.Height,
                    [.. sheet.SelectMany(l => Marks(l.label, grid.Label(l.At % grid.Count)))])),
        ];
    }

    static IEnumerable<Mark> Marks(Label label, Box box)
    {
        var side = Math.Min(LargestCode, Math.Min(box.Height, 0.55 * box.Width) - 2 * Edge);
        var square = new Vec2(box.Left + Edge, box.Bottom + (box.Height - side) / 2);
        var words = new Box(square.X + side, box.Bottom + Edge, box.Right - Edge, box.Top - Edge);
        return QrCode.Draw(label.Scanned, square, side).Concat(Words(label, words));
    }

    /// <summary>The code as large as fits, then the title and the remark in what is left.</summary>
    static List<Mark> Words(Label label, Box box)
    {
        var marks = new List<Mark>();
        var y = box.Top;
        void Set(string line, double height)
        {
            marks.Add(new TextMark(new(box.Left, y - height), line, height, Layers.Text));
            y -= Leading * height;
        }
        int Room(double height) => (int)((y - box.Bottom + (Leading - 1) * height) / (Leading * height));

        var (lines, size) = Code(label.Code, box.Width);
        foreach (var line in lines) Set(line, size);
        var small = box.Height > 30 ? 3.5 : 2.5;
        var title = Fit.Lines(label.Title, small, box.Width, Math.Max(0, Room(small)));
        foreach (var line in title) Set(line, small);
        foreach (var line in Fit.Lines(label.Remark, 2.5, box.Width, Math.Max(0, Room(2.5)))) Set(line, 2.5);
        return marks;
    }

    /// <summary>In one line if it can be read there, else broken at its dash.</summary>
    static (string[] Lines, double Height) Code(string code, double width)
    {
        if (Fit.Largest(code, width, 2.5, 3.5, 5) is { } one) return ([code], one);
        var broken = code.Split('-');
        return (broken, broken.Min(b => Fit.Largest(b, width, 1.8, 2.5, 3.5) ?? 1.8));
    }
}
