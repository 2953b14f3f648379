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
                if (!label.Stands(board, at, apart: true)) continue;
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
        if (TryLed(board, place, rim, label, ways, apart: true) || TryLed(board, place, rim, label, ways, apart: false)) return;
        // Nothing is free: over the whole view, whatever the leader crosses on its way.
        new Path(place, rim, board.Clear.Bounds.Top - place.Y + label.Width, Math.PI / 2, label).Draw(board, label);
    }

    static bool TryLed(Board board, Vec2 place, double rim, Label label, IReadOnlyList<double> ways, bool apart)
    {
        foreach (var (length, way) in Steps(6, 3, ways).Concat(Steps(5, 2, s_round)))
        {
            var path = new Path(place, rim, length, way, label);
            if (!path.IsFree(board, label, apart)) continue;
            path.Draw(board, label);
            return true;
        }
        return false;
    }

    static IEnumerable<(double Length, double Way)> Steps(double first, double step, IReadOnlyList<double> ways)
    {
        for (var length = first; length < Longest; length += step)
        {
            foreach (var way in ways) yield return (length, way);
        }
    }

    static readonly double[] s_round = [.. Enumerable.Range(0, 72).Select(i => (i + 0.5) * Math.PI / 36)];

    /// <summary>From the rim to an elbow, along a level shelf to the figure.</summary>
    readonly struct Path
    {
        readonly Vec2 _direction, _tip, _elbow, _shelf, _figure;

        public Path(Vec2 place, double rim, double length, double way, Label label)
        {
            _direction = Vec2.Polar(way);
            (_tip, _elbow) = (place + _direction * rim, place + _direction * (rim + length));
            var right = _direction.X >= 0;
            _shelf = _elbow + new Vec2(right ? Shelf : -Shelf, 0);
            _figure = _shelf + new Vec2(right ? 1 : -1 - label.Width, -Letter.Usual / 2);
        }

        public bool IsFree(Board board, Label label, bool apart) =>
            label.Stands(board, _figure, apart) && board.Clear.Passes(_tip, _elbow) && board.Clear.Passes(_elbow, _shelf);

        public void Draw(Board board, Label label)
        {
            board.Line(_tip, _elbow, Layers.Dimensions, Stroke.Dimension);
            board.Line(_elbow, _shelf, Layers.Dimensions, Stroke.Dimension);
            board.Arrow(_tip, -_direction);
            label.Draw(board, _figure, 0);
        }
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
