using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Where a flange is cut so that it can close up or open: as many cuts as keep each V within a third of the flange and 8 mm (common practice), spread as the strain is.</summary>
sealed record NotchPlan(ImmutableArray<Notch> Vees, double VeeWidth, ImmutableArray<double> Slits, double SlitWidth, double Depth)
{
    const double Widest = 8;

    // A cut that must make way for a hole is tried at so many places to each side.
    const int Tries = 100;

    /// <param name="clear">Whether a cut at a place along the fold, with half its width along the fold (0 for a slit), is clear of all holes.</param>
    public static NotchPlan Of(FoldEdge edge, EdgeStrain strain, Func<double, double, bool> clear)
    {
        var shape = edge.Shape!;
        var reach = edge.Parts.Max(p => edge.DevelopedAt(p.Middle));
        var widest = Math.Clamp((reach - shape.Allowance) / 3, 2 * shape.Thickness, Widest);
        var (close, closeWidth) = Spread(edge, strain, -1, widest, clear);
        var (open, openWidth) = Spread(edge, strain, 1, widest, clear);
        return new([.. close.Select(a => new Notch(a, Half(edge, a, closeWidth)))], closeWidth, open, openWidth, reach - shape.Allowance);
    }

    static double Half(FoldEdge edge, double along, double width) => width / 2 / Stretched(edge, along);

    /// <summary>Length of the free edge on the blank for a mm of fold.</summary>
    static double Stretched(FoldEdge edge, double along) => 1 - edge.Place(along).CurveOut * edge.DevelopedAt(along);

    static (ImmutableArray<double> Along, double Width) Spread(FoldEdge edge, EdgeStrain strain, int sign, double widest, Func<double, double, bool> clear)
    {
        var worked = strain.Spans.Where(s => s.Change * sign > 0 && (Math.Abs(s.Edge) > EdgeStrain.Unseen || Math.Abs(s.Lip) > EdgeStrain.Unseen)).ToList();
        var total = worked.Sum(s => Math.Abs(s.Change));
        if (total <= 0) return ([], 0);
        var n = (int)Math.Ceiling(total / widest);
        double At(double share) => AlongWhere(edge, worked, share * total);
        double Opened(double along) => sign < 0 ? Half(edge, along, total / n) : 0;
        var cuts = ImmutableArray.CreateBuilder<double>(n);
        for (var i = 0; i < n; i++)
        {
            // A cut that makes way stays in its own share of the strain, so that no two come together.
            var (from, to, middle) = (At((double)i / n), At((i + 1.0) / n), At((i + 0.5) / n));
            bool Fits(double a) => a - Opened(a) - edge.Shape!.Thickness >= from && a + Opened(a) + edge.Shape.Thickness <= to && clear(a, Opened(a));
            if (clear(middle, Opened(middle))) cuts.Add(middle);
            else cuts.Add(Enumerable.Range(1, Tries - 1).SelectMany(k => new[] { -k, k }).Select(k => At((i + 0.5 + 0.5 * k / Tries) / n)).Where(Fits).DefaultIfEmpty(middle).First());
        }
        return (cuts.MoveToImmutable(), total / n);
    }

    /// <summary>Along the fold to where so much of the length is gained or lost.</summary>
    static double AlongWhere(FoldEdge edge, List<StrainSpan> worked, double change)
    {
        var (k, before) = (0, 0.0);
        while (k < worked.Count - 1 && before + Math.Abs(worked[k].Change) < change) before += Math.Abs(worked[k++].Change);
        var share = (change - before) / Math.Abs(worked[k].Change);
        return edge.AlongAt(worked[k].From + share * (worked[k].To - worked[k].From));
    }
}
