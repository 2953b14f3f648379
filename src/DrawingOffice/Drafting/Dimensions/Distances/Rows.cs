using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;

/// <summary>
/// Dimension lines in rows beside a view. A dimension takes the nearest row in which its line and figure are clear of all others,
/// of all lettering, and of the extension lines still to come; the farthest choice is always clear, so it ends.
/// </summary>
sealed class Rows(Board board, Side side, double lowest, double highest)
{
    const double First = 10, Pitch = 8, Air = 1.5, OutsideArrow = 6;

    // A figure may begin where an extension line stands, rounding apart, mm.
    const double Touch = 1e-6;

    readonly List<List<(double From, double To)>> _taken = [];

    /// <summary>How one dimension could stand: its line, its figure, and by how many rows the figure is moved out.</summary>
    readonly record struct Stand(double LineFrom, double LineTo, double Figure, Ends Ends, int Lift = 0);

    /// <summary>Arrows point outwards from between the extension lines, or inwards from outside where there is no room; links of a chain get dots then.</summary>
    enum Ends { Inside, Outside, Dots }

    /// <param name="a">Where the dimension is taken from: along the side, and how far from the view's edge its feature lies (negative, on the view).</param>
    /// <param name="later">Where extension lines are still to come, mm along the side.</param>
    public void Place((double U, double V) a, (double U, double V) b, Label label, IReadOnlyCollection<double> later, bool mayLift)
    {
        var (low, high) = a.U <= b.U ? (a, b) : (b, a);
        var ways = Ways(low.U, high.U, label, mayLift).ToList();
        for (var row = 0; ; row++)
        {
            foreach (var way in ways)
            {
                // Past forty rows lettering lies on every extension line; a crossed one is better than none.
                if (!Fits(row, way, label, later) || (row < 40 && !Reaches(row, low, high))) continue;
                Draw(row, way, label, low, high);
                return;
            }
        }
    }

    IEnumerable<Stand> Ways(double low, double high, Label label, bool mayLift)
    {
        var (gap, width) = (high - low, label.Width);
        var inside = gap >= 2 * Board.ArrowLength + 1 ? Ends.Inside : Ends.Outside;
        var stub = inside == Ends.Inside ? 0 : OutsideArrow;
        if (gap >= width + 2 * Board.ArrowLength + 1) yield return new(low, high, (low + high - width) / 2, inside);
        else if (mayLift)
        {
            for (var lift = 1; lift <= 3; lift++) yield return new(low, high, (low + high - width) / 2, inside == Ends.Inside ? inside : Ends.Dots, lift);
        }
        yield return new(low - stub, high + stub + Air + width, high + stub + Air, inside);
        yield return new(low - stub - Air - width, high + stub, low - stub - Air - width, inside);
        yield return new(low - stub, highest + OutsideArrow + Air + width, highest + OutsideArrow + Air, inside);
        yield return new(lowest - OutsideArrow - Air - width, high + stub, lowest - OutsideArrow - Air - width, inside);
    }

    static double V(int row) => First + row * Pitch;

    List<(double From, double To)> Taken(int row)
    {
        while (_taken.Count <= row) _taken.Add([]);
        return _taken[row];
    }

    bool Fits(int row, Stand way, Label label, IReadOnlyCollection<double> later)
    {
        var figure = (way.Figure - Air, way.Figure + label.Width + Air);
        if (!IsClear(row, (way.LineFrom, way.LineTo)) || !IsClear(row + way.Lift, figure)) return false;
        if (later.Any(u => u > figure.Item1 + Touch && u < figure.Item2 - Touch)) return false;
        var box = label.Around(side.Baseline(way.Figure, V(row + way.Lift)), side.Turn);
        if (way.Lift > 0 && !board.Clear.Passes(side.At(Middle(way), V(row)), side.At(Middle(way), Near(row + way.Lift)))) return false;
        return board.Clear.Free(box) && board.Clear.Passes(side.At(way.LineFrom, V(row)), side.At(way.LineTo, V(row)));
    }

    bool IsClear(int row, (double From, double To) span) => !Taken(row).Exists(t => t.From < span.To && span.From < t.To);

    bool Reaches(int row, (double U, double V) a, (double U, double V) b) =>
        board.Clear.Passes(side.At(a.U, a.V + 1), side.At(a.U, V(row) + 1.5)) && board.Clear.Passes(side.At(b.U, b.V + 1), side.At(b.U, V(row) + 1.5));

    void Draw(int row, Stand way, Label label, (double U, double V) low, (double U, double V) high)
    {
        var v = V(row);
        foreach (var (u, start) in new[] { low, high })
            board.Line(side.At(u, start + 1), side.At(u, v + 1.5), Layers.Dimensions, Stroke.Dimension);
        board.Line(side.At(way.LineFrom, v), side.At(way.LineTo, v), Layers.Dimensions, Stroke.Dimension);
        Finish(way.Ends, side.At(low.U, v), side.At(high.U, v));
        if (way.Lift > 0) board.Line(side.At(Middle(way), v), side.At(Middle(way), Near(row + way.Lift)), Layers.Dimensions, Stroke.Dimension);
        label.Draw(board, side.Baseline(way.Figure, V(row + way.Lift)), side.Turn);
        Taken(row).Add((way.LineFrom, way.LineTo));
        Taken(row + way.Lift).Add((way.Figure, way.Figure + label.Width));
    }

    void Finish(Ends ends, Vec2 low, Vec2 high)
    {
        if (ends == Ends.Dots)
        {
            foreach (var at in new[] { low, high }) board.Add(new CircleMark(at, 0.5, Layers.Dimensions, Stroke.Dimension));
            return;
        }
        var outwards = ends == Ends.Inside ? side.Along : -side.Along;
        board.Arrow(low, -outwards);
        board.Arrow(high, outwards);
    }

    static double Middle(Stand way) => (way.LineFrom + way.LineTo) / 2;

    /// <summary>Where the figures of a row begin, seen from the view.</summary>
    double Near(int row) => side.V(side.Baseline(0, V(row))) - (side.Upright ? Label.Reach.Over : Label.Reach.Under);
}
