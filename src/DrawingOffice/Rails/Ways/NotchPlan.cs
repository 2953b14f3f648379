using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Where a flange is cut so that it can close up or open: as many cuts as keep each V within a third of the flange and 8 mm (common practice), spread as the strain is.</summary>
sealed record NotchPlan(ImmutableArray<Notch> Vees, double VeeWidth, ImmutableArray<double> Slits, double SlitWidth, double Depth)
{
    const double Widest = 8;

    public static NotchPlan Of(FoldEdge edge, EdgeStrain strain)
    {
        var shape = edge.Shape!;
        var reach = edge.Parts.Max(p => edge.DevelopedAt(p.Middle));
        var widest = Math.Clamp((reach - shape.Allowance) / 3, 2 * shape.Thickness, Widest);
        var (close, closeWidth) = Spread(edge, strain, -1, widest);
        var (open, openWidth) = Spread(edge, strain, 1, widest);
        return new([.. close.Select(a => new Notch(a, closeWidth / 2 / Stretched(edge, a)))], closeWidth, open, openWidth, reach - shape.Allowance);
    }

    /// <summary>Length of the free edge on the blank for a mm of fold.</summary>
    static double Stretched(FoldEdge edge, double along) => 1 - edge.Place(along).CurveOut * edge.DevelopedAt(along);

    static (ImmutableArray<double> Along, double Width) Spread(FoldEdge edge, EdgeStrain strain, int sign, double widest)
    {
        var worked = strain.Spans.Where(s => s.Change * sign > 0 && (Math.Abs(s.Edge) > EdgeStrain.Unseen || Math.Abs(s.Lip) > EdgeStrain.Unseen)).ToList();
        var total = worked.Sum(s => Math.Abs(s.Change));
        if (total <= 0) return ([], 0);
        var n = (int)Math.Ceiling(total / widest);
        var along = ImmutableArray.CreateBuilder<double>(n);
        var (k, before) = (0, 0.0);
        for (var i = 0; i < n; i++)
        {
            var wanted = (i + 0.5) / n * total;
            while (k < worked.Count - 1 && before + Math.Abs(worked[k].Change) < wanted) before += Math.Abs(worked[k++].Change);
            var share = (wanted - before) / Math.Abs(worked[k].Change);
            along.Add(edge.AlongAt(worked[k].From + share * (worked[k].To - worked[k].From)));
        }
        return (along.ToImmutable(), total / n);
    }
}
