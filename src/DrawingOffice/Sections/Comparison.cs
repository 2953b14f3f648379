using System.Collections.Immutable;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>One figure of the original beside the copy's.</summary>
/// <param name="What">In words.</param>
/// <param name="Unit">Of both figures.</param>
/// <param name="MoreIsBetter">False for mass.</param>
public sealed record Compared(string What, string Unit, double Original, double Copy, bool MoreIsBetter = true)
{
    public double Ratio => Copy / Original;

    /// <summary>To within a thousandth, which no sheet keeps to.</summary>
    public bool NoWorse => MoreIsBetter ? Ratio >= 0.999 : Ratio <= 1.001;
}

/// <summary>A section with the metal it is made of.</summary>
public sealed record MadeSection(Profile Profile, SectionProperties Properties, Material Material)
{
    /// <summary>Yield reckoned with, MPa: the least that is stated.</summary>
    public double Yield => Material.Yield.Low ?? Material.Yield.High ?? 0;

    double Modulus => Material.E.Typical ?? 0;

    double Shear => Modulus / (2 * (1 + Material.Poisson));

    /// <summary>
    /// Stiffness and strength in bending about both axes and about the weakest, in torsion where walls are thin, and mass. N, mm and kg.
    /// Buckling of thin walls, fatigue and what welding does to the metal are not in the figures.
    /// </summary>
    public ImmutableArray<Compared> Against(MadeSection original)
    {
        var (a, b) = (original.Properties, Properties);
        var rows = ImmutableArray.CreateBuilder<Compared>();
        rows.Add(new("stiffness, bending up and down", "kN m²", original.Modulus * a.Ix * 1e-9, Modulus * b.Ix * 1e-9));
        rows.Add(new("stiffness, bending sideways", "kN m²", original.Modulus * a.Iy * 1e-9, Modulus * b.Iy * 1e-9));
        rows.Add(new("stiffness, bending the weakest way", "kN m²", original.Modulus * a.Principal.Least * 1e-9, Modulus * b.Principal.Least * 1e-9));
        rows.Add(new("bending up and down until it yields", "N m", original.Yield * a.Zx * 1e-3, Yield * b.Zx * 1e-3));
        rows.Add(new("bending sideways until it yields", "N m", original.Yield * a.Zy * 1e-3, Yield * b.Zy * 1e-3));
        rows.Add(new("stiffness, twisting", "kN m²", original.Shear * a.Torsion * 1e-9, Shear * b.Torsion * 1e-9));
        if (a.TorsionModulus is { } wa && b.TorsionModulus is { } wb)
            rows.Add(new("twisting until it yields", "N m", 0.577 * original.Yield * wa * 1e-3, 0.577 * Yield * wb * 1e-3));
        rows.Add(new("mass of one metre", "kg", a.MassPerMetre(original.Material.Density), b.MassPerMetre(Material.Density), MoreIsBetter: false));
        return rows.ToImmutable();
    }
}
