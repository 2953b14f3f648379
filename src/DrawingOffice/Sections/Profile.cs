using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>One piece of sheet seen end-on: its middle line and thickness, mm.</summary>
/// <param name="Closed">The end of the line runs on into its start (a tube).</param>
public sealed record Strip(string Name, double Thickness, Chain Middle, bool Closed = false);

/// <summary>Where two strips are held to each other along their length.</summary>
/// <param name="At">Near the place; each strip is taken at the point of its middle line that lies nearest.</param>
/// <param name="Plug">Hole of the plug welds, mm; null for a seam welded through or a strip that runs on.</param>
/// <param name="Pitch">Of the plugs, mm; null asks for the pitch that is needed.</param>
public sealed record Join(string First, string Second, Vec2 At, double? Plug = null, double? Pitch = null);

/// <summary>The cross-section of a part, as strips of sheet joined along its length, or as a solid outline with holes; mm.</summary>
public sealed record Profile(string Title, ImmutableArray<Strip> Strips, ImmutableArray<Join> Joins)
{
    /// <summary>Anticlockwise; null for a section of strips.</summary>
    public Loop? Solid { get; init; }

    public ImmutableArray<Loop> Holes { get; init; } = [];
}

/// <summary>
/// Properties about the centroid in the axes drawn, mm², mm⁴, mm⁶. Area and second moments are those of the true outline with its
/// rounded corners; torsion, shear centre and warping those of the middle line (thin walls), to about thickness over width.
/// </summary>
/// <param name="Ix">∫y² about the axis lying along x: bending up and down.</param>
/// <param name="Iy">∫x² about the upright axis: bending sideways.</param>
/// <param name="Torsion">Saint-Venant's constant.</param>
/// <param name="TorsionModulus">Torque over the greatest shear stress, mm³.</param>
/// <param name="ShearCentre">Null for a solid.</param>
/// <param name="Warping">Null for a solid.</param>
public sealed record SectionProperties(double Area, Vec2 Centroid, double Ix, double Iy, double Ixy, double Torsion, double TorsionModulus,
    Vec2? ShearCentre, double? Warping)
{
    /// <summary>Greatest distance of metal from the centroid upwards, downwards, right and left, mm.</summary>
    public required (double Up, double Down, double Right, double Left) Reach { get; init; }

    /// <summary>Closed cells; 0 for an open section.</summary>
    public int Cells { get; init; }
}
