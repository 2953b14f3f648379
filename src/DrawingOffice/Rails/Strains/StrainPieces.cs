using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>The rail flat in one piece with its strains laid on it, for the eye: flanges and lips in stretches, each with the strain at its outer edge.</summary>
public static class StrainPieces
{
    // A stretch of an arc is cut so fine that its chord lies within a hundredth of its length, and across into bands.
    const double Turned = 0.15;
    const int Bands = 3;

    /// <param name="limits">What the metal bears, stretched and shrunk.</param>
    /// <returns>Null where nothing is strained by more than bending takes up unseen.</returns>
    public static Piece? Of(RailForm form, ImmutableArray<EdgeStrain> strains, WorkLimits limits)
    {
        if (strains.All(s => s.Stretch < EdgeStrain.Unseen && s.Shrink < EdgeStrain.Unseen)) return null;
        var outline = RailOutline.Closed(Walk(form.Lower), Walk(form.Upper));
        return new("flat in one piece", form.Rail.Thickness, outline) { Strains = [.. form.Folds.SelectMany(f => Patches(form, f, limits))] };
    }

    static List<WitnessMark.Maths.Geometry.Corner> Walk(FoldEdge edge) => RailOutline.Beside(edge, edge.DevelopedAt, cut: true, []);

    static IEnumerable<StrainPatch> Patches(RailForm form, FoldEdge edge, WorkLimits limits)
    {
        foreach (var part in edge.Parts.Where(p => !p.InCrease))
        {
            var turn = Math.Abs(edge.Place(part.Middle, part.Step).CurveOut) * (part.To - part.From);
            var n = Math.Max(1, (int)Math.Ceiling(turn / Turned));
            for (var k = 0; k < n; k++)
                for (var band = 0; band < Bands; band++)
                {
                    var (from, to) = (part.From + (part.To - part.From) * k / n, part.From + (part.To - part.From) * (k + 1) / n);
                    var middle = (from + to) / 2;
                    var strain = StrainMap.At(form, edge, part, middle, Flat(edge, middle, band + 1));
                    Vec2 Place(double along, int line) => edge.Place(along, part.Step) is var p ? p.At + p.Out * Flat(edge, along, line) : default;
                    yield return new([Place(from, band), Place(to, band), Place(to, band + 1), Place(from, band + 1)], strain, strain > 0 ? limits.Stretch : limits.Shrink);
                }
        }
    }

    /// <summary>From the web's tangent line to a line between bands, mm.</summary>
    static double Flat(FoldEdge edge, double along, int line) => edge.Shape!.Allowance + (edge.DevelopedAt(along) - edge.Shape.Allowance) * line / Bands;
}
