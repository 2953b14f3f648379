using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>
/// Properties about the centroid in the axes drawn, mm², mm⁴, mm⁶. Area and second moments are those of the true outline with its
/// rounded corners; torsion, shear centre and warping those of the middle line (thin walls), to about thickness over width.
/// </summary>
/// <param name="Ix">∫y² about the axis lying along x: bending up and down.</param>
/// <param name="Iy">∫x² about the upright axis: bending sideways.</param>
/// <param name="Torsion">Saint-Venant's constant.</param>
/// <param name="TorsionModulus">Torque over the greatest shear stress, mm³; null for a solid.</param>
/// <param name="ShearCentre">Null for a solid.</param>
/// <param name="Warping">Null for a solid.</param>
public sealed record SectionProperties(double Area, Vec2 Centroid, double Ix, double Iy, double Ixy, double Torsion, double? TorsionModulus,
    Vec2? ShearCentre, double? Warping)
{
    /// <summary>Greatest distance of metal from the centroid upwards, downwards, right and left, mm.</summary>
    public required (double Up, double Down, double Right, double Left) Reach { get; init; }

    /// <summary>Closed cells; 0 for an open section.</summary>
    public int Cells { get; init; }

    /// <summary>Least section modulus for bending up and down: Ix over the farther edge, mm³.</summary>
    public double Zx => Ix / Math.Max(Reach.Up, Reach.Down);

    /// <summary>Least section modulus for bending sideways, mm³.</summary>
    public double Zy => Iy / Math.Max(Reach.Right, Reach.Left);

    /// <summary>Greatest and least second moment about any axis through the centroid, mm⁴.</summary>
    public (double Most, double Least) Principal
    {
        get
        {
            var half = new Vec2((Ix - Iy) / 2, Ixy).Length;
            return ((Ix + Iy) / 2 + half, (Ix + Iy) / 2 - half);
        }
    }

    /// <summary>Direction of the axis of the greatest second moment from the x axis, radians in (−π/2, π/2].</summary>
    public double PrincipalTurn => Math.Atan2(-2 * Ixy, Ix - Iy) / 2;

    /// <summary>Of one metre, kg.</summary>
    /// <param name="density">kg/m³.</param>
    public double MassPerMetre(double density) => Area * density * 1e-6;

    /// <summary>Refuses walls that cross or bend sharper than they are thick, joins that do not meet, strips that hang free, and holes not inside a solid or not clear of each other.</summary>
    public static Parsed<SectionProperties> Of(Profile profile)
    {
        var edges = Outlines(profile);
        if (edges.Refusal is { } refusal) return refusal;
        var moments = edges.Value.Aggregate(default(AreaMoments), (sum, e) => e.Metal ? sum + AreaMoments.Of(e.Edge) : sum - AreaMoments.Of(e.Edge));
        var about = moments.Moved(-moments.Centroid);
        var reach = Reaches([.. edges.Value.Where(e => e.Metal).Select(e => e.Edge)], moments.Centroid);
        if (profile.Solid is not null)
            // Saint-Venant's own approximation, A⁴/(40 Ip); good to about a tenth for compact shapes without holes.
            return new SectionProperties(moments.Area, moments.Centroid, about.YY, about.XX, about.XY,
                Math.Pow(moments.Area, 4) / (40 * (about.XX + about.YY)), null, null, null)
            {
                Reach = reach,
            };
        var thin = ThinWalls.Of(profile);
        if (thin.Refusal is { } loose) return loose;
        return new SectionProperties(moments.Area, moments.Centroid, about.YY, about.XX, about.XY, thin.Value.Torsion, thin.Value.TorsionModulus,
            thin.Value.ShearCentre, thin.Value.Warping)
        {
            Reach = reach,
            Cells = thin.Value.Net.Rings.Length,
        };
    }

    static Parsed<ImmutableArray<(Loop Edge, bool Metal)>> Outlines(Profile profile)
    {
        if (profile.Solid is { } solid)
            return HoleFit.Wrong(solid, profile.Holes) is { } misplaced ? misplaced : ImmutableArray.Create([(solid, true), .. profile.Holes.Select(h => (h, false))]);
        var edges = ImmutableArray.CreateBuilder<(Loop, bool)>();
        if (profile.Strips.IsEmpty) return Refusal.Of("strips", "none", "give at least one");
        foreach (var strip in profile.Strips)
        {
            if (!(strip.Thickness > 0)) return Refusal.Of($"strip {strip.Name}, thickness", $"{strip.Thickness}", "give a thickness above 0");
            if (strip.Middle.LeastRadius < strip.Thickness / 2 - Profile.Same)
                return Refusal.Of($"strip {strip.Name}, radius", $"{strip.Middle.LeastRadius:0.###} mm at mid-thickness", $"give at least half the thickness, {strip.Thickness / 2:0.###} mm, or a sharp corner");
            var loops = strip.Middle.Edges(strip.Thickness, strip.Closed);
            if (Crossings.Of(loops[0].Flatten(0.01).AsSpan(), 1) is [var at, ..])
                return Refusal.Of($"strip {strip.Name}, line", $"it meets itself near {at.At.X:0.#}, {at.At.Y:0.#}", "let it run clear of itself");
            edges.AddRange(loops.Select((l, i) => (l, i == 0)));
        }
        return edges.ToImmutable();
    }

    static (double, double, double, double) Reaches(ImmutableArray<Loop> edges, Vec2 centroid)
    {
        double Far(Vec2 towards) => edges.Max(e => Enumerable.Range(0, e.Count).Max(i => new Side(e.Start(i), e.End(i), e.Corners[i].Bulge).Reach(towards))) - centroid.Dot(towards);
        return (Far(new(0, 1)), Far(new(0, -1)), Far(new(1, 0)), Far(new(-1, 0)));
    }
}
