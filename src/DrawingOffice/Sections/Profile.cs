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
    /// <summary>Places nearer than this are one, mm.</summary>
    internal const double Same = 1e-7;

    /// <summary>Anticlockwise; null for a section of strips.</summary>
    public Loop? Solid { get; init; }

    /// <summary>Of the solid, each wholly inside it and clear of the others.</summary>
    public ImmutableArray<Loop> Holes { get; init; } = [];

    internal int Place(string strip)
    {
        for (var i = 0; i < Strips.Length; i++)
            if (Strips[i].Name == strip) return i;
        return -1;
    }
}
