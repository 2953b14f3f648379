using WitnessMark.FrontOffice.CompareSections;

namespace WitnessMark.Cli.Shapes;

/// <summary>Sections as JSON: mm, mm², mm³, mm⁴, mm⁶, N, radians.</summary>
static class SectionShape
{
    public static object Of(SectionsResult result) => new
    {
        Section = One(result.Section),
        Copy = result.Copy is { } copy ? One(copy) : null,
        Compared = result.Rows.Select(r => new { r.What, r.Unit, r.Original, r.Copy, r.Ratio, r.NoWorse }),
        result.NoWeaker,
        Cautions = result.Cautions.Select(c => c.Words),
    };

    static object One(ReckonedSection section)
    {
        var p = section.Made.Properties;
        return new
        {
            section.Made.Profile.Title,
            Material = section.Made.Material.Name,
            AreaMm2 = p.Area,
            MassPerMetreKg = p.MassPerMetre(section.Made.Material.Density),
            CentroidXMm = p.Centroid.X,
            CentroidYMm = p.Centroid.Y,
            IxMm4 = p.Ix,
            IyMm4 = p.Iy,
            IxyMm4 = p.Ixy,
            MostMm4 = p.Principal.Most,
            LeastMm4 = p.Principal.Least,
            PrincipalTurnRad = p.PrincipalTurn,
            ZxMm3 = p.Zx,
            ZyMm3 = p.Zy,
            TorsionMm4 = p.Torsion,
            TorsionModulusMm3 = p.TorsionModulus,
            ShearCentreXMm = p.ShearCentre?.X,
            ShearCentreYMm = p.ShearCentre?.Y,
            WarpingMm6 = p.Warping,
            p.Cells,
            Joins = section.Joins.Select(j => new
            {
                j.Join.First,
                j.Join.Second,
                FlowNPerMm = j.Flow,
                PlugBearsN = j.Plug,
                PitchNeededMm = j.Pitch is { } pitch && double.IsFinite(pitch) ? pitch : (double?)null,
                PitchChosenMm = j.Join.Pitch,
                j.Carries,
            }),
        };
    }
}
