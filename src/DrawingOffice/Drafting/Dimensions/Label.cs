using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>A figure on the drawing, with the number of its table row in a ring before it.</summary>
sealed record Label(string Text, int? Number = null, Tone Tone = Tone.Ink)
{
    const double Gap = 1.6, Air = 1.2;

    readonly string _ringed = Number?.ToString(CultureInfo.InvariantCulture) ?? "";

    double Ring { get; } = Number is null ? 0 : Math.Max(4.4, Letter.Width($"{Number}", Letter.Small) + 1.6);

    // Names beside one another are not read as one note; a name beside a note is.
    bool IsName => Number is null && !Text.Contains(' ');

    // Asked for at every place that is tried, so measured once.
    readonly double _figure = Letter.Width(Text, Letter.Usual);

    /// <summary>mm, from the left of the ring to the end of the figure.</summary>
    public double Width => Number is null ? _figure : Ring + Gap + _figure;

    /// <summary>Over and under the baseline, mm, with the ring, tails and a little air.</summary>
    public static (double Under, double Over) Reach => (1.4, Letter.Usual + 0.9);

    public Box Around(Vec2 leftBase, double turn)
    {
        var (under, over) = Reach;
        return Box.Round([leftBase + new Vec2(-Air, -under).Turned(turn), leftBase + new Vec2(Width + Air, over).Turned(turn)]);
    }

    /// <summary>Level, clear of all that is drawn, and far enough from notes on its line.</summary>
    public bool Stands(Board board, Vec2 leftBase, bool apart)
    {
        var box = Around(leftBase, 0);
        return board.Clear.Free(box) && (!apart || board.Clear.Apart(box));
    }

    /// <param name="leftBase">Left end of the baseline.</param>
    /// <param name="turn">0, or a quarter turn to be read from the right.</param>
    public void Draw(Board board, Vec2 leftBase, double turn)
    {
        var along = Vec2.Polar(turn);
        var x = 0.0;
        if (Number is not null)
        {
            var middle = leftBase + along * (Ring / 2) + along.Left * (Letter.Usual / 2);
            board.Add(new CircleMark(middle, Ring / 2, Layers.Dimensions, Stroke.Thin, Tone.Quiet));
            board.Text(middle - along.Left * (Letter.Small / 2), _ringed, Letter.Small, Layers.Dimensions, Anchor.Middle, turn, Tone.Quiet);
            x = Ring + Gap;
        }
        board.Text(leftBase + along * x, Text, Letter.Usual, Layers.Dimensions, Anchor.Left, turn, Tone);
        if (turn == 0 && !IsName) board.Clear.Note(Around(leftBase, turn));
        else board.Clear.Block(Around(leftBase, turn));
    }
}
