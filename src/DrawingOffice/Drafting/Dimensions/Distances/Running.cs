using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;

/// <summary>
/// Running dimensions: one line from a ringed zero, an arrow at each feature, the figure at the end of its extension line.
/// Where features lie closer than lettering, the extension lines fan out.
/// </summary>
static class Running
{
    const double First = 12, Step = 8, Fan = 6, Spacing = Letter.Usual + 2;

    /// <param name="zero">The datum along the side, and how far its feature lies from the view's edge (negative, on the view).</param>
    /// <param name="stops">In order along the side.</param>
    public static void Place(Board board, Side side, (double U, double V) zero, IReadOnlyList<(double U, double V, Label Label)> stops)
    {
        var all = stops.Append((zero.U, zero.V, Label: new Label("0"))).OrderBy(s => s.Item1).ToList();
        var spread = Spread([.. all.Select(s => s.Item1)]);
        var v = First;
        while (v < 400 && all.Where((s, i) => !board.Clear.Free(Around(side, spread[i], v, s.Label))).Any()) v += Step;
        Draw(board, side, zero, all, spread, v);
    }

    static void Draw(Board board, Side side, (double U, double V) zero, List<(double U, double V, Label Label)> all, double[] spread, double v)
    {
        board.Line(side.At(all[0].U, v), side.At(all[^1].U, v), Layers.Dimensions, Stroke.Dimension);
        board.Add(new CircleMark(side.At(zero.U, v), 1.2, Layers.Dimensions, Stroke.Dimension));
        for (var i = 0; i < all.Count; i++)
        {
            var (u, start, label) = all[i];
            board.Line(side.At(u, start + 1), side.At(u, v + 1), Layers.Dimensions, Stroke.Dimension);
            board.Line(side.At(u, v + 1), side.At(spread[i], v + Fan), Layers.Dimensions, Stroke.Dimension);
            if (u != zero.U) Stop(board, side, all, i, zero.U, v);
        }
        for (var i = 0; i < all.Count; i++) all[i].Label.Draw(board, Start(side, spread[i], v, all[i].Label), Turn(side));
    }

    // An arrow needs its own length of line; closer features get a dot.
    static void Stop(Board board, Side side, List<(double U, double V, Label Label)> all, int i, double zero, double v)
    {
        var up = all[i].U > zero;
        var before = all[up ? i - 1 : i + 1].U;
        if (Math.Abs(all[i].U - before) > Board.ArrowLength + 0.5) board.Arrow(side.At(all[i].U, v), up ? side.Along : -side.Along);
        else board.Add(new CircleMark(side.At(all[i].U, v), 0.5, Layers.Dimensions, Stroke.Dimension));
    }

    // Figures stand along the extension line: turned under a view, upright beside it.
    static double Turn(Side side) => side.Upright ? Math.PI / 2 : 0;

    static Vec2 Start(Side side, double u, double v, Label label) =>
        side.At(side.Upright ? u + Letter.Usual / 2 : u - Letter.Usual / 2, v + Fan + 1 + label.Width);

    static Box Around(Side side, double u, double v, Label label) => label.Around(Start(side, u, v, label), Turn(side));

    /// <summary>Places at least <see cref="Spacing"/> apart, with the least sum of squared moves (pool adjacent violators).</summary>
    static double[] Spread(double[] wanted)
    {
        var pools = new List<(double Mean, int Count)>();
        for (var i = 0; i < wanted.Length; i++)
        {
            pools.Add((wanted[i] - i * Spacing, 1));
            while (pools.Count > 1 && pools[^2].Mean > pools[^1].Mean)
            {
                var (a, b) = (pools[^2], pools[^1]);
                pools.RemoveRange(pools.Count - 2, 2);
                pools.Add(((a.Mean * a.Count + b.Mean * b.Count) / (a.Count + b.Count), a.Count + b.Count));
            }
        }
        var flat = pools.SelectMany(p => Enumerable.Repeat(p.Mean, p.Count));
        return [.. flat.Select((mean, i) => mean + i * Spacing)];
    }
}
