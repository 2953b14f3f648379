using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>The same thing with another listed value.</summary>
static class Neighbours
{
    public static IEnumerable<Hypothesis> Of(Hypothesis h, Shape shape, Origin origin, OriginPrior prior, Making making)
    {
        if (h.Nominal is not { } own) return [];
        return h.Kind switch
        {
            PatternKind.RoundSize => Sizes.Listed(shape, shape.Start, origin, prior, making).Where(o => o.Features[0] == h.Features[0] && Other(o.Nominal!, own)),
            PatternKind.RoundDistance => Distances.Rungs(own.Value, origin, prior).Where(r => Other(r.Nominal, own)).Select(r => Shifted(h, own, r.Nominal, r.LogStretch)),
            _ => [],
        };
    }

    static bool Other(Nominal a, Nominal b) => Math.Abs(a.Value - b.Value) > 1e-6;

    /// <summary>A condition "quantity − value" with the value exchanged.</summary>
    static Hypothesis Shifted(Hypothesis h, Nominal from, Nominal to, double logStretch)
    {
        var part = h.Parts[0];
        var more = to.Value - from.Value;
        return h with { Nominal = to, Parts = [new(part.Touched, logStretch, x => part.Of(x) - more)] };
    }
}
