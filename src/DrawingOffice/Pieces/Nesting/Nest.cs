using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Pieces.Nesting;

/// <summary>
/// Lays pieces on sheets by their true outlines. One after another each goes as far to the left as it can, then as low, on the first sheet that has
/// room (the bottom-left rule), turned so that its right end, or in every other try its left end, comes farthest to the left. The order decides
/// how good that is: largest first, longest first, widest first, then the best of them with two pieces exchanged, over and over. It is a search, not a proof: <see cref="NestPlan.LeastArea"/> says what no laying can beat.
/// Places up the sheet are in rows of 1/400 of its height (1 mm at least): a piece may stand so much farther from its neighbour than the gap asks.
/// </summary>
public static class Nest
{
    const int Rows = 400;

    // Chords of a curved edge stand so far inside it at most, mm; the piece is grown by it.
    const double Chord = 0.05;

    // Exchanges without gain before a new beginning.
    const int Patience = 40;

    /// <summary>Pieces in all, of each thickness.</summary>
    public const int Most = 400;

    /// <param name="times">How many of the whole kit.</param>
    /// <param name="stop">Ends the search with the best laying so far.</param>
    /// <exception cref="RefusedException">Too many pieces, or an option out of its range.</exception>
    public static NestPlan Of(ImmutableArray<Piece> pieces, ImmutableArray<StockSize> stock, NestOptions? options = null, int times = 1, CancellationToken stop = default)
    {
        var wish = options ?? new();
        if (wish.Turns is < 1 or > 72) throw new RefusedException(Refusal.Of("turns", $"{wish.Turns}", "give a whole number from 1 to 72"));
        if (wish.Gap is not (>= 0 and <= 1000)) throw new RefusedException(Refusal.Of("gap between pieces", $"{wish.Gap}", "give 0 to 1000 mm"));
        var plans = pieces.GroupBy(p => p.Thickness).OrderBy(g => g.Key).Select(g => OfThickness([.. g.SelectMany(p => Copies(p, times))], stock, wish, stop)).ToList();
        return new([.. plans.SelectMany(p => p.Sheets)], [.. plans.SelectMany(p => p.TooLarge)], plans.Sum(p => p.LeastArea), plans.Sum(p => p.Tried));
    }

    static IEnumerable<(Piece, bool)> Copies(Piece piece, int times)
    {
        var over = piece.Handed ? piece.TurnedOver() : null;
        for (var i = 0; i < piece.Quantity * times; i++)
        {
            yield return (piece, false);
            if (over is not null) yield return (over, true);
        }
    }

    static NestPlan OfThickness(ImmutableArray<(Piece Piece, bool Over)> copies, ImmutableArray<StockSize> stock, NestOptions wish, CancellationToken stop)
    {
        if (copies.Length > Most) throw new RefusedException(Refusal.Of("pieces to lay", $"{copies.Length}", $"at most {Most} of one thickness: make fewer at a time"));
        var fitting = stock.Select(s => new Bench(s, copies, wish)).ToList();
        ImmutableArray<int> whole = [.. Enumerable.Range(0, copies.Length).Where(i => fitting.Any(b => b.Fits(i)))];
        var tooLarge = copies.Where((_, i) => !whole.Contains(i)).Select(c => c.Piece.Name).Distinct();
        var area = whole.Sum(i => copies[i].Piece.Outline.Area);
        Laying? best = null;
        var tried = 0;
        foreach (var bench in fitting.Where(b => whole.All(b.Fits)))
        {
            var least = Math.Ceiling(area / bench.Size.Area - 1e-9) * bench.Size.Area;
            if (whole.Length == 0 || best is not null && least > best.Bought) continue;
            var (laying, orders) = Search(bench, whole, wish, stop);
            tried += orders;
            if (best is null || laying.Bought < best.Bought || laying.Bought == best.Bought && laying.Sheets.Count < best.Sheets.Count) best = laying;
        }
        return new(best is null ? [] : [.. best.Sheets.Select((s, i) => Smaller(s, best, i, fitting, copies))], [.. tooLarge], area, tried);
    }

    static (Laying Best, int Tried) Search(Bench bench, ImmutableArray<int> whole, NestOptions wish, CancellationToken stop)
    {
        var chance = new Chance(wish.Seed);
        IEnumerable<int>[] starts = [whole.OrderByDescending(bench.AreaOf), whole.OrderByDescending(bench.LongestOf), whole.OrderByDescending(bench.LeastWidthOf)];
        var (best, order, cost, tried, still) = ((Laying?)null, Array.Empty<int>(), double.PositiveInfinity, 0, 0);
        while (tried < wish.Orders || best is null)
        {
            // Where exchanges have led nowhere for long, all is shuffled and begun again.
            if (still > Patience) (cost, still) = (double.PositiveInfinity, 0);
            int[] next = tried < 2 * starts.Length ? [.. starts[tried / 2]] : double.IsFinite(cost) ? Exchanged(order, chance) : Shuffled(whole, chance);
            var laying = bench.Lay(next, byLeft: tried % 2 == 1);
            tried++;
            still = laying.Cost < cost ? 0 : still + 1;
            // An order as good is taken too: it leads on from where the best one stands still.
            if (laying.Cost <= cost) (order, cost) = (next, laying.Cost);
            if (best is null || laying.Cost < best.Cost) best = laying;
            if (stop.IsCancellationRequested || whole.Length == 1) break;
        }
        return (best, tried);
    }

    static int[] Shuffled(ImmutableArray<int> whole, Chance chance) => [.. whole.Select(i => (i, Key: chance.Uniform())).OrderBy(p => p.Key).Select(p => p.i)];

    static int[] Exchanged(int[] order, Chance chance)
    {
        var next = order.ToArray();
        var (a, b) = ((int)(chance.Uniform() * next.Length), (int)(chance.Uniform() * next.Length));
        (next[a], next[b]) = (next[b], next[a]);
        return next;
    }

    /// <summary>The last sheet is bought as small as its pieces allow.</summary>
    static NestedSheet Smaller(LaidSheet sheet, Laying laying, int i, List<Bench> benches, ImmutableArray<(Piece, bool)> copies)
    {
        if (i == laying.Sheets.Count - 1)
        {
            int[] order = [.. sheet.Places.Select(p => p.Copy)];
            foreach (var bench in benches.Where(b => b.Size.Area < laying.Bench.Size.Area && order.All(b.Fits)).OrderBy(b => b.Size.Area))
                if (bench.Lay(order, byLeft: false) is { Sheets: [var one] }) return one.Of(bench.Size, copies);
        }
        return sheet.Of(laying.Bench.Size, copies);
    }

    /// <summary>One size of sheet, lying with its longer side across, and every piece in its turns ready to be laid on it.</summary>
    sealed class Bench
    {
        readonly ImmutableArray<Shape> _copies;
        readonly double _width;
        readonly int _rows;
        readonly double _row;
        readonly double _grow;

        public Bench(StockSize size, ImmutableArray<(Piece Piece, bool Over)> copies, NestOptions wish)
        {
            Size = size;
            var height = Math.Min(size.Width, size.Height);
            _row = Math.Max(1, height / Rows);
            _grow = wish.Gap / 2;
            // The gap is kept between pieces only, so the room is larger by half a gap on each side.
            (_width, _rows) = (Math.Max(size.Width, size.Height) + 2 * _grow, (int)Math.Floor((height + 2 * _grow) / _row + 1e-7));
            int[] turns = wish.Grain ? [0, 180] : [.. Enumerable.Range(0, wish.Turns).Select(k => 360 * k / wish.Turns)];
            var known = new Dictionary<Piece, Shape>(ReferenceEqualityComparer.Instance);
            _copies = [.. copies.Select(c => known.TryGetValue(c.Piece, out var s) ? s : known[c.Piece] = Ready(c.Piece, turns))];
        }

        public StockSize Size { get; }

        Shape Ready(Piece piece, int[] turns)
        {
            var curved = Enumerable.Range(0, piece.Outline.Count).Any(i => !piece.Outline.Straight(i));
            var points = piece.Outline.Flatten(Chord);
            var turned = turns.Select(t => Turned.Of(points, t * Math.PI / 180, _grow + (curved ? Chord : 0), _row)).Where(t => t.Width <= _width + 1e-6 && t.Rows.Length <= _rows).ToImmutableArray();
            var (w, h) = (points.Max(p => p.X) - points.Min(p => p.X), points.Max(p => p.Y) - points.Min(p => p.Y));
            return new(turned, piece.Outline.Area, Math.Max(w, h), Math.Min(w, h));
        }

        public bool Fits(int copy) => _copies[copy].Turns.Length > 0;

        public double AreaOf(int copy) => _copies[copy].Area;

        public double LongestOf(int copy) => _copies[copy].Longest;

        public double LeastWidthOf(int copy) => _copies[copy].LeastWidth;

        public Laying Lay(int[] order, bool byLeft)
        {
            var open = new List<(OpenSheet Sheet, List<(int, Pose2)> Places)>();
            foreach (var copy in order)
            {
                if (open.Any(o => Put(o.Sheet, o.Places, copy, byLeft))) continue;
                var (sheet, places) = (new OpenSheet(_width, _rows), new List<(int, Pose2)>());
                Put(sheet, places, copy, byLeft);
                open.Add((sheet, places));
            }
            return new(this, [.. open.Select(o => new LaidSheet([.. o.Places], Math.Min(o.Sheet.Used - 2 * _grow, Math.Max(Size.Width, Size.Height))))]);
        }

        bool Put(OpenSheet sheet, List<(int, Pose2)> places, int copy, bool byLeft)
        {
            var (best, end) = (((Turned Turned, double X, int Row)?)null, double.PositiveInfinity);
            foreach (var turned in _copies[copy].Turns)
                if (sheet.Place(turned, byLeft ? end + turned.Width : end) is var (x, row))
                    (best, end) = ((turned, x, row), (byLeft ? x : x + turned.Width) - 1e-6);
            if (best is not { } found) return false;
            sheet.Put(found.Turned, found.X, found.Row);
            places.Add((copy, found.Turned.Pose with { Origin = found.Turned.Pose.Origin + new Vec2(found.X - _grow, found.Row * _row - _grow) }));
            return true;
        }
    }

    sealed record Shape(ImmutableArray<Turned> Turns, double Area, double Longest, double LeastWidth);

    sealed record Laying(Bench Bench, List<LaidSheet> Sheets)
    {
        public double Bought => Sheets.Count * Bench.Size.Area;

        /// <summary>Whole sheets first, then how much of the last is taken.</summary>
        public double Cost => (Sheets.Count - 1) * Math.Max(Bench.Size.Width, Bench.Size.Height) + Sheets[^1].Used;
    }

    sealed record LaidSheet(ImmutableArray<(int Copy, Pose2 Pose)> Places, double Used)
    {
        public NestedSheet Of(StockSize size, ImmutableArray<(Piece Piece, bool Over)> copies) =>
            new(size, copies[Places[0].Copy].Piece.Thickness, [.. Places.Select(p => new Laid(copies[p.Copy].Piece, copies[p.Copy].Over, p.Pose))], Used);
    }
}
