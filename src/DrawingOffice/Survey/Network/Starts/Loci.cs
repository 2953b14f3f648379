using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// Where one feature may lie, seen from all others as they stand: each reading puts it on a circle or on a pair of lines, and
/// two readings on their crossings. Serves to place a feature that was not sketched and to look for a second place that fits as well.
/// </summary>
sealed class Loci(Solver solver)
{
    /// <summary>More readings than these add no new crossing worth trying.</summary>
    const int MostLoci = 8;

    readonly record struct Locus(Vec2 Centre, double Radius, Vec2 Along)
    {
        public bool IsLine => Radius == 0;
    }

    readonly Layout _layout = solver.Layout;
    readonly List<int>[] _rowsOf = RowsOf(solver);

    /// <summary>Equations that mention the feature or an edge that runs through it.</summary>
    public IReadOnlyList<int> Rows(int feature) => _rowsOf[feature];

    /// <summary>Every crossing of two loci of the feature; where there is but one circle, places all round it.</summary>
    public IEnumerable<Vec2> Candidates(int feature, double[] x, Func<int, bool> placed)
    {
        var loci = _rowsOf[feature].SelectMany(r => Of(feature, r, x, placed)).Take(MostLoci).ToList();
        if (loci.Count == 1 || (loci.Count == 2 && loci[0].IsLine && loci[1].IsLine))
            foreach (var place in Along(loci[0])) yield return place;
        for (var i = 0; i < loci.Count; i++)
            for (var k = 0; k < i; k++)
                foreach (var place in Crossings(loci[i], loci[k])) yield return place;
    }

    /// <summary>Weighted sum of squares of the feature's rows that lean on placed features only, with the feature put at a place.</summary>
    public double Misfit(int feature, Vec2 place, double[] x, double[] weights, Func<int, bool> placed)
    {
        var first = _layout.First(feature);
        var (wasX, wasY) = (x[first], x[first + 1]);
        (x[first], x[first + 1]) = (place.X, place.Y);
        double sum = 0;
        foreach (var r in _rowsOf[feature])
        {
            if (weights[r] == 0 || !Leans(feature, r, placed)) continue;
            var f = solver.Equations.Residual(r, x);
            sum += weights[r] * f * f;
        }
        (x[first], x[first + 1]) = (wasX, wasY);
        return sum;
    }

    bool Leans(int feature, int row, Func<int, bool> placed)
    {
        if (solver.Equations.Rows[row].Kind == ReadingKind.Picked) return false;
        foreach (var f in solver.Places(row))
            if (f != feature && !placed(f)) return false;
        return true;
    }

    IEnumerable<Locus> Of(int feature, int row, double[] x, Func<int, bool> placed)
    {
        if (!Leans(feature, row, placed)) yield break;
        var o = solver.Equations.Rows[row];
        var other = o.From == feature ? o.To : o.From;
        var radii = _layout.Radius(feature, x) + (other >= 0 && _layout.HasPlace(other) ? _layout.Radius(other, x) : 0);
        switch (o.Kind)
        {
            case ReadingKind.CentreDistance:
                yield return new Locus(_layout.Place(other, x), Math.Max(o.Value, 1e-6), default);
                break;
            case ReadingKind.OutsideOverHoles:
                yield return new Locus(_layout.Place(other, x), Math.Max(o.Value - radii, 1e-6), default);
                break;
            case ReadingKind.InsideBetweenHoles:
                yield return new Locus(_layout.Place(other, x), Math.Max(o.Value + radii, 1e-6), default);
                break;
            case ReadingKind.On when _layout.HasPlace(other):
                yield return new Locus(_layout.Place(other, x), Math.Max(radii, 1e-6), default);
                break;
            case ReadingKind.LengthAlongEdge or ReadingKind.Chord when _layout.Corners(o.From) is var (a, b) && (a == feature || b == feature):
                yield return new Locus(_layout.Place(a == feature ? b : a, x), Math.Max(o.Value, 1e-6), default);
                break;
            case ReadingKind.EdgeToHole or ReadingKind.CentreToEdge or ReadingKind.On or ReadingKind.Tangent when o.From == feature && !_layout.HasPlace(o.To):
                var (at, along) = _layout.Line(o.To, x);
                var off = o.Value + (o.Kind is ReadingKind.EdgeToHole or ReadingKind.Tangent ? _layout.Radius(feature, x) : 0);
                yield return new Locus(at + off * along.Left, 0, along);
                if (off != 0) yield return new Locus(at - off * along.Left, 0, along);
                break;
        }
    }

    IEnumerable<Vec2> Along(Locus locus)
    {
        for (var k = 0; k < 16; k++)
            yield return locus.IsLine
                ? locus.Centre + (k - 8) / 8.0 * _layout.Lever * locus.Along
                : locus.Centre + Vec2.Polar(k * Math.PI / 8, locus.Radius);
    }

    /// <summary>Crossings of two loci; where they just miss, the place between them.</summary>
    static IEnumerable<Vec2> Crossings(Locus a, Locus b)
    {
        if (a.IsLine && b.IsLine)
        {
            var cross = a.Along.Cross(b.Along);
            if (Math.Abs(cross) > 1e-6) yield return a.Centre + (b.Centre - a.Centre).Cross(b.Along) / cross * a.Along;
            yield break;
        }
        if (a.IsLine) (a, b) = (b, a);
        Vec2 foot, aside;
        if (b.IsLine)
        {
            foot = b.Centre + (a.Centre - b.Centre).Dot(b.Along) * b.Along;
            var off = foot.DistanceTo(a.Centre);
            aside = Math.Sqrt(Math.Max(0, a.Radius * a.Radius - off * off)) * b.Along;
        }
        else
        {
            var between = b.Centre - a.Centre;
            var apart = between.Length;
            if (apart < 1e-9) yield break;
            var t = (apart * apart + a.Radius * a.Radius - b.Radius * b.Radius) / (2 * apart);
            foot = a.Centre + t * between.Unit;
            aside = Math.Sqrt(Math.Max(0, a.Radius * a.Radius - t * t)) * between.Unit.Left;
        }
        yield return foot + aside;
        yield return foot - aside;
    }

    static List<int>[] RowsOf(Solver solver)
    {
        var rows = new List<int>[solver.Layout.Features.Length];
        for (var i = 0; i < rows.Length; i++) rows[i] = [];
        for (var r = 0; r < solver.Equations.Rows.Length; r++)
            foreach (var f in solver.Places(r)) rows[f].Add(r);
        return rows;
    }
}
