using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>
/// An open line of straights and arcs, mm: the middle of a sheet seen end-on. Side i runs from corner i to the next with the bulge of corner i;
/// the last corner has none.
/// </summary>
public sealed record Chain(ImmutableArray<Corner> Corners)
{
    public int Sides => Corners.Length - 1;

    public Vec2 Start => Corners[0].At;

    public Vec2 End => Corners[^1].At;
}
