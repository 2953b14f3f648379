using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns;

/// <summary>
/// Lays one part, turned over, on another: are they a left and a right hand of one drawing? Corners, holes, slots and arcs are
/// matched by kind, size and place; the fit is a shift and a turn by least squares.
/// </summary>
/// <remarks>Each place is taken as equally known both ways (mean square of its ellipse) and independent; chi-square is so far approximate.</remarks>
public static class LeftRight
{
    /// <summary>mm: features further apart after the best laying are not one another's image.</summary>
    const double Match = 1.5;

    /// <summary>Chance below which the two do not fit.</summary>
    const double Unlikely = 0.001;

    /// <param name="making">Of both parts; by hand where null.</param>
    /// <exception cref="RefusedException">A plan has fewer than two determined places.</exception>
    public static HandedVerdict Compare(Plan first, Plan second, Making? making = null)
    {
        var made = (making ?? Making.ByHand).Checked();
        var (a, b) = (Marks(first.Believed, "first plan"), Marks(second.Believed, "second plan"));
        var over = b.Select(m => m with { At = new Vec2(-m.At.X, m.At.Y) }).ToImmutableArray();
        var (turned, same) = (Laid.Best(a, over, made), Laid.Best(a, b, made));
        bool Fits(Laid? l) => l is not null && l.Pairs.Length == a.Length && a.Length == b.Length && l.Tail > Unlikely;
        var fit = turned ?? new Laid([], 0, 0);
        var words = (Fits(turned), Fits(same)) switch
        {
            (true, true) => $"The two are alike either way up: one drawing serves both hands. {Worst(fit)}",
            (true, false) => $"The second is the other hand of the first. {Worst(fit)}",
            (false, true) => "The two are of one hand: the second is a copy of the first, not its mirror image.",
            _ => $"The two are not a pair: {fit.Pairs.Length} of {Math.Max(a.Length, b.Length)} features answer one another when the second is turned over"
                + (fit.Freedom > 0 ? string.Create(CultureInfo.InvariantCulture, $", chi-square {fit.ChiSquare:0.0} for {fit.Freedom}.") : "."),
        };
        return new(Fits(turned), fit.Pairs, fit.ChiSquare, fit.Freedom, words);
    }

    static string Worst(Laid laid) => laid.Pairs.MaxBy(p => p.Apart) is { } worst
        ? string.Create(CultureInfo.InvariantCulture, $"Furthest apart are {worst.First} and {worst.Second}, by {worst.Apart:0.00} mm.") : "";

    static ImmutableArray<Mark> Marks(Plan plan, string which)
    {
        ImmutableArray<Mark> marks =
        [
            .. plan.Features.Where(f => f.Kind != FeatureKind.Edge && !f.Loose)
                .Select(f => new Mark(f.Id, f.Kind, f.At, f.Size?.Value ?? 0, (f.Ellipse.Major * f.Ellipse.Major + f.Ellipse.Minor * f.Ellipse.Minor) / 2)),
        ];
        return marks.Length >= 2 ? marks : throw new RefusedException(Refusal.Of(which, $"{marks.Length} places", "at least two corners or holes that are not loose are needed"));
    }

    sealed record Mark(string Id, FeatureKind Kind, Vec2 At, double Size, double Variance)
    {
        public bool MayBe(Mark other) => Kind == other.Kind && Math.Abs(Size - other.Size) < 0.3 + 0.05 * Size;
    }

    /// <summary>One part laid on the other.</summary>
    sealed record Laid(ImmutableArray<HandedPair> Pairs, double ChiSquare, int Freedom)
    {
        public double Tail => Freedom > 0 ? Maths.Statistics.ChiSquare.Above(ChiSquare, Freedom) : 1;

        /// <summary>Tries every pair of the second under the longest pair of the first, and keeps the laying that matches most, nearest.</summary>
        public static Laid? Best(ImmutableArray<Mark> a, ImmutableArray<Mark> b, Making making)
        {
            var (i, k) = Enumerable.Range(0, a.Length).SelectMany(i => Enumerable.Range(i + 1, a.Length - i - 1).Select(k => (i, k))).MaxBy(p => a[p.i].At.DistanceTo(a[p.k].At));
            Laid? best = null;
            foreach (var p in b.Where(p => p.MayBe(a[i])))
                foreach (var q in b.Where(q => q != p && q.MayBe(a[k]) && Math.Abs(q.At.DistanceTo(p.At) - a[k].At.DistanceTo(a[i].At)) < Match))
                {
                    var turn = (a[k].At - a[i].At).Angle - (q.At - p.At).Angle;
                    var laid = Refined(a, b, a[i].At - p.At.Turned(turn), turn, making);
                    if (best is null || laid.Pairs.Length > best.Pairs.Length || (laid.Pairs.Length == best.Pairs.Length && laid.ChiSquare < best.ChiSquare)) best = laid;
                }
            return best;
        }

        static Laid Refined(ImmutableArray<Mark> a, ImmutableArray<Mark> b, Vec2 shift, double turn, Making making)
        {
            List<(Mark A, Mark B)> Matched() =>
            [
                .. a.Select(m => (A: m, B: b.Where(m.MayBe).MinBy(n => (n.At.Turned(turn) + shift).DistanceTo(m.At))))
                    .Where(m => m.B is not null && (m.B.At.Turned(turn) + shift).DistanceTo(m.A.At) < Match).Select(m => (m.A, m.B!)).DistinctBy(m => m.Item2.Id),
            ];
            for (var round = 0; round < 3; round++)
            {
                var pairs = Matched();
                if (pairs.Count < 2) break;
                var (ca, cb) = (Mean(pairs.Select(p => p.A.At)), Mean(pairs.Select(p => p.B.At)));
                turn = Math.Atan2(pairs.Sum(p => (p.B.At - cb).Cross(p.A.At - ca)), pairs.Sum(p => (p.B.At - cb).Dot(p.A.At - ca)));
                shift = ca - cb.Turned(turn);
            }
            var last = Matched();
            double Apart((Mark A, Mark B) p) => (p.B.At.Turned(turn) + shift).DistanceTo(p.A.At);
            double Strays(Mark m) => m.Variance + Math.Pow(m.Kind is FeatureKind.Hole or FeatureKind.Slot ? making.Place : making.Corner, 2);
            return new([.. last.Select(p => new HandedPair(p.A.Id, p.B.Id, Apart(p)))], last.Sum(p => Apart(p) * Apart(p) / (Strays(p.A) + Strays(p.B))), Math.Max(0, 2 * last.Count - 3));
        }

        static Vec2 Mean(IEnumerable<Vec2> points) => points.Aggregate(Vec2.Zero, (s, p) => s + p) / points.Count();
    }
}
