using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// Sequential construction: features are placed one after the other, best tied first, at the crossings of their loci. Two ties
/// leave two places; both are followed, and later readings weed out the wrong ones (a beam of the best partial shapes is kept).
/// </summary>
sealed class Construction(Solver solver, CancellationToken stop)
{
    /// <summary>Partial shapes followed at once. Each undecided feature doubles them; 32 carries five open at a time.</summary>
    const int Beam = 32;

    readonly Layout _layout = solver.Layout;
    readonly Loci _loci = new(solver);

    sealed record Shape(double[] X, double Misfit);

    /// <summary>The best few full shapes that grow from the features placed so far (a first pair is laid down where there is none).</summary>
    /// <param name="placed">By feature; all true on return.</param>
    public IReadOnlyList<double[]> Grow(double[] x, bool[] placed)
    {
        var fromNothing = placed.Count(p => p) < 2;
        if (fromNothing) LaySeed(x, placed);
        var beam = new List<Shape> { new(x, 0) };
        while (Next(placed) is { } feature)
        {
            stop.ThrowIfCancellationRequested();
            var grown = beam.SelectMany(s => Places(s, feature, placed)).OrderBy(s => s.Misfit);
            beam = Kept(grown, fromNothing && placed.Count(p => p) == 2 ? 1 : Beam, feature);
            placed[feature] = true;
        }
        return [.. beam.Take(6).Select(s => s.X)];
    }

    /// <summary>Two features with a distance between them and as many common neighbours as can be.</summary>
    void LaySeed(double[] x, bool[] placed)
    {
        var neighbours = Enumerable.Range(0, placed.Length).Select(f => _loci.Rows(f).SelectMany(r => solver.Places(r)).ToHashSet()).ToArray();
        var best = solver.Equations.Rows
            .Where(o => o.Kind is ReadingKind.CentreDistance or ReadingKind.OutsideOverHoles or ReadingKind.InsideBetweenHoles or ReadingKind.LengthAlongEdge)
            .Select(o => _layout.PlacesIn(o).ToArray() is [var a, var b] ? (a, b, Length: Length(o, x)) : (a: -1, b: -1, Length: 0))
            .Where(p => p.a >= 0)
            .OrderByDescending(p => neighbours[p.a].Intersect(neighbours[p.b]).Count()).ThenByDescending(p => p.Length)
            .Select(p => ((int a, int b, double Length)?)p).FirstOrDefault();
        if (best is not { } seed) return;
        // A single sketched place says nothing of the shape and might stand in the way of the pair.
        Array.Clear(placed);
        Put(x, seed.a, Vec2.Zero);
        Put(x, seed.b, new Vec2(seed.Length, 0));
        placed[seed.a] = placed[seed.b] = true;
    }

    double Length(Observed o, double[] x)
    {
        double Radii() => _layout.Radius(o.From, x) + _layout.Radius(o.To, x);
        return o.Kind switch
        {
            ReadingKind.OutsideOverHoles => Math.Max(1e-3, o.Value - Radii()),
            ReadingKind.InsideBetweenHoles => o.Value + Radii(),
            _ => o.Value,
        };
    }

    /// <summary>The feature with most ties to placed ones; null when all are placed.</summary>
    int? Next(bool[] placed) => Enumerable.Range(0, placed.Length).Where(i => _layout.HasPlace(i) && !placed[i])
        .OrderByDescending(i => _loci.Rows(i).Count(r => solver.Places(r).All(f => f == i || placed[f])))
        .Select(i => (int?)i).FirstOrDefault();

    IEnumerable<Shape> Places(Shape shape, int feature, bool[] placed)
    {
        var candidates = _loci.Candidates(feature, shape.X, f => placed[f]).DefaultIfEmpty(Aside(shape.X, placed, feature));
        foreach (var place in candidates)
        {
            var x = (double[])shape.X.Clone();
            Put(x, feature, place);
            yield return new Shape(x, shape.Misfit + _loci.Misfit(feature, place, shape.X, solver.Weights, f => placed[f]));
        }
    }

    /// <summary>The best shapes that differ in where the last feature lies; near doubles would crowd out the other side.</summary>
    List<Shape> Kept(IEnumerable<Shape> shapes, int most, int feature)
    {
        var kept = new List<Shape>();
        foreach (var shape in shapes)
        {
            if (kept.Count == most) break;
            var place = _layout.Place(feature, shape.X);
            if (!kept.Any(k => k.X != shape.X && Near(k, shape, place, feature))) kept.Add(shape);
        }
        return kept;
    }

    bool Near(Shape kept, Shape shape, Vec2 place, int feature)
    {
        if (_layout.Place(feature, kept.X).DistanceTo(place) > 0.02 * _layout.Lever) return false;
        for (var u = 0; u < shape.X.Length; u++)
            if (Math.Abs(kept.X[u] - shape.X[u]) > 0.02 * _layout.Lever) return false;
        return true;
    }

    /// <summary>A place of its own for a feature that nothing ties: near the middle, so that it shows on the plan.</summary>
    Vec2 Aside(double[] x, bool[] placed, int feature)
    {
        var known = Enumerable.Range(0, placed.Length).Where(i => placed[i]).Select(i => _layout.Place(i, x)).ToList();
        var middle = known.Count == 0 ? Vec2.Zero : known.Aggregate((a, b) => a + b) / known.Count;
        return middle + Vec2.Polar(feature * 2.4, 0.1 * _layout.Lever);
    }

    void Put(double[] x, int feature, Vec2 p) => (x[_layout.First(feature)], x[_layout.First(feature) + 1]) = (p.X, p.Y);
}
