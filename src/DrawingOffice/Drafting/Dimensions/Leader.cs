using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>Finds room for a figure that belongs to a place inside a view.</summary>
static class Leader
{
    const double Shelf = 2, Longest = 120;

    /// <summary>Beside the place without a line when there is room; else on a leader.</summary>
    /// <param name="rim">The figure stays this far from the place, mm.</param>
    public static void Beside(Board board, Vec2 place, double rim, Label label)
    {
        foreach (var off in new[] { 1.2, 2.4, 3.6 })
        {
            for (var i = 0; i < 16; i++)
            {
                var at = Near(place, Vec2.Polar(Math.PI / 4 + i * Math.PI / 8), rim + off, label);
                if (!board.Clear.Free(label.Around(at, 0))) continue;
                label.Draw(board, at, 0);
                return;
            }
        }
        Led(board, place, rim, label, EveryWay);
    }

    /// <summary>On a leader with an arrow at the rim and a short level shelf before the figure.</summary>
    /// <param name="ways">Directions to try, radians, best first.</param>
    public static void Led(Board board, Vec2 place, double rim, Label label, IReadOnlyList<double> ways)
    {
        for (var length = 6.0; length < Longest; length += 3)
        {
            foreach (var way in ways)
            {
                if (Draw(board, place, rim, length, Vec2.Polar(way), label, mayCross: false)) return;
            }
        }
        for (var length = 5.0; length < Longest; length += 2)
        {
            for (var i = 0; i < 72; i++)
            {
                if (Draw(board, place, rim, length, Vec2.Polar((i + 0.5) * Math.PI / 36), label, mayCross: false)) return;
            }
        }
        // Nothing is free: over the whole view, whatever the leader crosses on its way.
        var up = board.Clear.Bounds.Top - place.Y + label.Width;
        Draw(board, place, rim, up, Vec2.Polar(Math.PI / 2), label, mayCross: true);
    }

    static bool Draw(Board board, Vec2 place, double rim, double length, Vec2 direction, Label label, bool mayCross)
    {
        var (tip, elbow) = (place + direction * rim, place + direction * (rim + length));
        var right = direction.X >= 0;
        var shelf = elbow + new Vec2(right ? Shelf : -Shelf, 0);
        var at = shelf + new Vec2(right ? 1 : -1 - label.Width, -Letter.Usual / 2);
        if (!mayCross && !(board.Clear.Free(label.Around(at, 0)) && board.Clear.Passes(tip, elbow) && board.Clear.Passes(elbow, shelf))) return false;
        board.Line(tip, elbow, Layers.Dimensions, Stroke.Dimension);
        board.Line(elbow, shelf, Layers.Dimensions, Stroke.Dimension);
        board.Arrow(tip, -direction);
        label.Draw(board, at, 0);
        return true;
    }

    /// <summary>Slanting ways first, clear of centre lines and extension lines, which run level and upright.</summary>
    public static IReadOnlyList<double> EveryWay { get; } =
        [.. new[] { 45.0, 135, 30, 150, 60, 120, -45, -135, -30, -150, -60, -120, 15, 165, 75, 105, -15, -165, -75, -105 }.Select(d => d * Math.PI / 180)];

    /// <summary>Ways close to one direction, then close to its opposite.</summary>
    public static IReadOnlyList<double> Along(double direction) =>
        [.. new[] { 0.0, 180 }.SelectMany(turn => new[] { 0.0, 15, -15, 30, -30, 45, -45, 60, -60 }.Select(d => direction + (turn + d) * Math.PI / 180))];

    static Vec2 Near(Vec2 place, Vec2 direction, double off, Label label)
    {
        var box = label.Around(Vec2.Zero, 0);
        var reach = Math.Abs(direction.X) * box.Width / 2 + Math.Abs(direction.Y) * box.Height / 2;
        return place + direction * (off + reach) - box.Middle;
    }
}
