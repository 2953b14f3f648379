using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Tables;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>Sizes alike, and sizes on the lists.</summary>
static class Sizes
{
    // Widest gap worth weighing, as a share of the size: beyond it no making explains two holes of one drill.
    const double Widest = 0.08;

    public static IEnumerable<Hypothesis> Alike(Shape shape)
    {
        var all = shape.Sized;
        // With many sizes about, one is bound to come near another.
        var choice = -Math.Log(Math.Max(1, Different(shape) - 1));
        for (var i = 0; i < all.Length; i++)
            for (var k = i + 1; k < all.Length; k++)
            {
                var (a, b) = (all[i], all[k]);
                var size = shape.Size(a, shape.Start);
                if (shape.Kind(a) != shape.Kind(b) || Math.Abs(shape.Size(b, shape.Start) - size) > 0.3 + Widest * size) continue;
                // Sizes of every order are alike beforehand; a plate holds from a rivet hole to a lamp hole, a factor of twenty.
                yield return new(PatternKind.EqualSize, [a, b], [Equal(shape, a, b, Math.Log(size * Math.Log(20)))], choice);
            }
    }

    /// <summary>Sizes that are plainly different from each other.</summary>
    static int Different(Shape shape)
    {
        double[] sizes = [.. shape.Sized.Select(f => shape.Size(f, shape.Start)).Order()];
        return sizes.Length - Enumerable.Range(1, Math.Max(0, sizes.Length - 1)).Count(i => sizes[i] - sizes[i - 1] < 0.1 + 0.002 * sizes[i]);
    }

    public static Tie Equal(Shape shape, int a, int b, double logRange) =>
        new([a, b], logRange, x => shape.Size(a, x) - shape.Size(b, x));

    /// <summary>Every listed size near a feature's.</summary>
    public static IEnumerable<Hypothesis> Listed(Shape shape, double[] x, Origin origin, OriginPrior prior, Making making)
    {
        foreach (var f in shape.Sized)
        {
            var subject = shape.Kind(f) == FeatureKind.Arc ? Subject.Radius : Subject.Hole;
            var over = shape.Kind(f) == FeatureKind.Hole ? making.Over : 0;
            var size = shape.Size(f, x) - over;
            var room = 0.5 + 0.05 * size;
            var series = Catalogue.SeriesOf(subject);
            foreach (var same in Catalogue.Between(subject, Facet.Size, Math.Max(0.1, size - room), size + room).GroupBy(c => Math.Round(c.Size, 3)))
            {
                var mass = same.Sum(c => c.Mass * prior.Weight(origin, c.Series, series));
                if (!(mass > 0)) continue;
                var first = same.MaxBy(c => c.Mass * prior.Weight(origin, c.Series, series))!;
                yield return new(PatternKind.RoundSize, [f], [Is(shape, f, first.Size + over, Math.Log(mass * first.Size))], 0)
                {
                    Nominal = new(first.Size, first.Name, first.Series),
                };
            }
        }
    }

    public static Tie Is(Shape shape, int f, double size, double logRange) => new([f], logRange, x => shape.Size(f, x) - size);
}
