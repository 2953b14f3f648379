using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>How much longer (positive) or shorter a flange must become along a stretch, if it is folded up in one piece with the web; strains are shares of the blank's length.</summary>
/// <param name="From">Along the base line, mm.</param>
/// <param name="Middle">Half way across the flange.</param>
/// <param name="Edge">At the flange's free edge, or where its lip begins.</param>
/// <param name="Lip">At the lip's free edge; NaN without a lip.</param>
/// <param name="Change">What the outermost edge gains or loses over the stretch, mm.</param>
public sealed record StrainSpan(double From, double To, double Middle, double Edge, double Lip, double Change);

/// <summary>The strain along one edge of the web.</summary>
/// <param name="Edge">"lower" or "upper".</param>
/// <param name="Gaps">Corners and creases, where the metal does not stretch but parts or laps.</param>
public sealed record EdgeStrain(string Edge, ImmutableArray<StrainSpan> Spans, ImmutableArray<Gap> Gaps)
{
    /// <summary>Largest stretch anywhere, 0 or more.</summary>
    public double Stretch => Math.Max(0, Spans.Max(s => Math.Max(Math.Max(s.Middle, s.Edge), double.IsNaN(s.Lip) ? 0 : s.Lip)));

    /// <summary>Largest shrink, 0 or more.</summary>
    public double Shrink => Math.Max(0, -Spans.Min(s => Math.Min(Math.Min(s.Middle, s.Edge), double.IsNaN(s.Lip) ? 0 : s.Lip)));

    /// <summary>Length along which the flange must stretch or shrink by more than a part in two hundred, which bending takes up unseen (common practice), mm.</summary>
    public double WorkedLength => Spans.Where(s => Math.Abs(s.Edge) > Unseen || Math.Abs(s.Lip) > Unseen).Sum(s => s.To - s.From);

    public const double Unseen = 0.005;
}

/// <summary>Where two runs of a flange meet in a corner of the web's edge or at a crease of the web.</summary>
/// <param name="At">Along the base line, mm.</param>
/// <param name="Width">At the outermost edge, mm: positive, a V that opens and is filled; negative, metal too much, a V to be cut or already open in the blank, and welded shut.</param>
/// <param name="InBlank">The V is open in the blank as it is cut.</param>
public sealed record Gap(double At, double Width, bool InBlank);

/// <summary>
/// The law: a fibre at y from the fold on the blank is as long as the fold there times 1 − k·y, with k the fold's curvature on the sheet, towards
/// the flange; formed it is as long as 1 − (curvature vector)·(where the fibre stands from the fold), and longer by the twist of the sheet about a fold that runs
/// aslant. The share by which they differ is the strain. Exact for fibres that keep their distance from the fold. With a turning section the
/// formed length is measured on the shape itself (central difference over half a millimetre, to 1e-6).
/// </summary>
public static class StrainMap
{
    const double HalfStep = 0.25;

    public static ImmutableArray<EdgeStrain> Of(RailForm form) => [.. form.Folds.Select(f => Of(form, f))];

    static EdgeStrain Of(RailForm form, FoldEdge edge)
    {
        var spans = ImmutableArray.CreateBuilder<StrainSpan>(edge.Parts.Length);
        foreach (var part in edge.Parts)
            if (!part.InCrease) spans.Add(Span(form, edge, part));
        var gaps = edge.Wedges.Select(w => new Gap(edge.BaseAt(w.Along), w.Angle * Reach(edge, w), w.Open));
        return new(edge.Name, spans.ToImmutable(), [.. gaps]);
    }

    /// <summary>How far from the corner's tip the outermost edge lies, mm.</summary>
    static double Reach(FoldEdge edge, Wedge w) => edge.DevelopedAt(w.Along) - edge.Shape!.Allowance / 2;

    static StrainSpan Span(RailForm form, FoldEdge edge, EdgePart part)
    {
        var shape = edge.Shape!;
        double Worst(Func<double, double> flat)
        {
            // A width that changes along an arc makes the strain change with it; its ends and middle bound it.
            var worst = 0.0;
            foreach (var along in new[] { part.From, part.Middle, part.To })
                if (At(form, edge, part, along, flat(along)) is var e && Math.Abs(e) > Math.Abs(worst)) worst = e;
            return worst;
        }
        double FreeEdge(double along) => shape.Allowance + shape.Flat(edge.FlangeAt(along));
        var lip = shape.LipTurn == 0 ? double.NaN : Worst(edge.DevelopedAt);
        var place = edge.Place(part.Middle, part.Step);
        var reach = edge.DevelopedAt(part.Middle);
        var change = At(form, edge, part, part.Middle, reach) * (1 - place.CurveOut * reach) * (part.To - part.From);
        return new(edge.BaseAt(part.From), edge.BaseAt(part.To), Worst(a => shape.Allowance + shape.Flat(edge.FlangeAt(a)) / 2), Worst(FreeEdge), lip, change);
    }

    /// <summary>Strain of one fibre.</summary>
    /// <param name="flat">From the web's tangent line on the blank, mm.</param>
    internal static double At(RailForm form, FoldEdge edge, EdgePart part, double along, double flat)
    {
        var place = edge.Place(along, part.Step);
        var blank = 1 - place.CurveOut * flat;
        if (form.Twisted) return Measured(form, edge, part, along, flat) / blank - 1;
        var (o, e, _) = edge.Shape!.At(flat, edge.FlangeAt(along));
        var straight = 1 - place.CurveOut * o - place.CurveEye * e;
        var aslant = place.Twist * Math.Sqrt(o * o + e * e);
        return (aslant == 0 ? straight : Math.Sqrt(straight * straight + aslant * aslant)) / blank - 1;
    }

    /// <summary>Formed length of a fibre over that of the fold on the blank, measured on the shape.</summary>
    internal static double Measured(RailForm form, FoldEdge edge, EdgePart part, double along, double flat)
    {
        var room = Math.Min(HalfStep, (part.To - part.From) / 4);
        var middle = Math.Clamp(along, part.From + room, part.To - room);
        // The fibre keeps its place in the section of the middle, whose flange is as wide as there.
        var (o, e, _) = edge.Shape!.At(flat, edge.FlangeAt(middle));
        Maths.Vec3 Stand(double a)
        {
            var place = edge.Place(a, part.Step);
            var s = form.Stand(edge.BaseAt(a), place.At);
            return s.At + (s.Along * place.Out.X + s.Up * place.Out.Y) * o + s.Eye * e;
        }
        return Stand(middle - room).DistanceTo(Stand(middle + room)) / (2 * room);
    }
}
