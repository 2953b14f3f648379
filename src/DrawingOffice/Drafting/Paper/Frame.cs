using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>
/// The frame of a drawing sheet: 20 mm left for the binder, 10 mm elsewhere, a thick line; centring marks at the middle of each side;
/// a grid for finding things by letter (down) and number (across). Margins and 50 mm fields in the manner of ISO 5457.
/// </summary>
static class Frame
{
    public const double Binding = 20, Margin = 10, Strip = 5, Field = 50;

    // I and O are read as figures.
    const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    public static Box Inside(PaperSize paper) => new(Binding, Margin, paper.Width - Margin, paper.Height - Margin);

    public static void Draw(Board board, PaperSize paper)
    {
        var inside = Inside(paper);
        var outer = inside.Grown(Strip);
        board.Rectangle(inside, Layers.Frame, Stroke.Outline);
        board.Rectangle(outer, Layers.Frame, Stroke.Thin, Tone.Quiet);
        Centring(board, inside);
        // A4 has room for the grid on two sides only.
        var all = Math.Max(paper.Width, paper.Height) > 300;
        Across(board, inside, inside.Top, outer.Top);
        Down(board, inside, inside.Right, outer.Right);
        if (!all) return;
        Across(board, inside, outer.Bottom, inside.Bottom);
        Down(board, inside, outer.Left, inside.Left);
    }

    static void Centring(Board board, Box inside)
    {
        // The one at the foot stops at the frame: the title block stands on it.
        const double Inwards = 3;
        var m = inside.Middle;
        Mark(new(m.X, inside.Top + Strip), new(m.X, inside.Top - Inwards));
        Mark(new(m.X, inside.Bottom - Strip), new(m.X, inside.Bottom));
        Mark(new(inside.Left - Strip, m.Y), new(inside.Left + Inwards, m.Y));
        Mark(new(inside.Right + Strip, m.Y), new(inside.Right - Inwards, m.Y));

        void Mark(Vec2 from, Vec2 to) => board.Add(new LineMark(from, to, Layers.Frame, Stroke.Outline));
    }

    static void Across(Board board, Box inside, double low, double high)
    {
        var ends = Fields(inside.Left, inside.Right);
        for (var i = 0; i + 1 < ends.Count; i++)
        {
            if (i > 0) board.Add(new LineMark(new(ends[i], low), new(ends[i], high), Layers.Frame, Stroke.Thin, Tone.Quiet));
            Name(board, new((ends[i] + ends[i + 1]) / 2, (low + high) / 2), $"{i + 1}", ends[i + 1] - ends[i]);
        }
    }

    static void Down(Board board, Box inside, double left, double right)
    {
        var ends = Fields(inside.Bottom, inside.Top);
        for (var i = 0; i + 1 < ends.Count; i++)
        {
            if (i > 0) board.Add(new LineMark(new(left, ends[i]), new(right, ends[i]), Layers.Frame, Stroke.Thin, Tone.Quiet));
            Name(board, new((left + right) / 2, (ends[i] + ends[i + 1]) / 2), Letters[(ends.Count - 2 - i) % Letters.Length].ToString(), ends[i + 1] - ends[i]);
        }
    }

    static void Name(Board board, Vec2 middle, string text, double room)
    {
        // Beside the centring mark, never on it; a sliver of a field keeps its letter out.
        if (room < 8) return;
        board.Text(middle - new Vec2(0, Letter.Small / 2), text, Letter.Small, Layers.Frame, Anchor.Middle, tone: Tone.Quiet);
    }

    /// <summary>50 mm fields laid out from the middle; what is left makes the end fields longer or, past half a field, its own.</summary>
    static List<double> Fields(double low, double high)
    {
        var middle = (low + high) / 2;
        var half = (int)Math.Max(1, Math.Round((high - low) / 2 / Field));
        var ends = new List<double> { low };
        for (var i = -half + 1; i < half; i++) ends.Add(middle + i * Field);
        ends.Add(high);
        return ends;
    }
}
