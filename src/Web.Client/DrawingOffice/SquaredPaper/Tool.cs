using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

/// <summary>What the pointer does on the squared paper.</summary>
public enum Tool { Move, Corner, Hole, Slot, Edge, Arc }

/// <summary>Makes the feature that a tool places, with the next free id of its letter.</summary>
public static class Placing
{
    public static Feature Corner(ImmutableArray<Feature> on, Vec2 at) => new(Next(on, "C"), FeatureKind.Point) { Sketch = at };

    public static Feature Hole(ImmutableArray<Feature> on, Vec2 at) => new(Next(on, "H"), FeatureKind.Hole) { Sketch = at };

    public static Feature Edge(ImmutableArray<Feature> on, string from, string to) => new(Next(on, "E"), FeatureKind.Edge) { From = from, To = to };

    /// <param name="size">Rough radius, mm: how far the pointer was drawn out from the centre.</param>
    public static Feature Arc(ImmutableArray<Feature> on, Vec2 centre, double? size) => new(Next(on, "A"), FeatureKind.Arc) { Sketch = centre, SketchSize = size };

    /// <param name="first">End centre where the pointer went down.</param>
    /// <param name="second">End centre where it came up.</param>
    public static Feature Slot(ImmutableArray<Feature> on, Vec2 first, Vec2 second) => new(Next(on, "S"), FeatureKind.Slot)
    {
        Sketch = (first + second) / 2,
        SketchTurn = (second - first).Angle,
        SketchLength = first.DistanceTo(second),
    };

    /// <summary>Letter and the least number not in use: H1, H2 ...</summary>
    public static string Next(ImmutableArray<Feature> on, string letter)
    {
        for (var n = 1; ; n++)
            if (!on.Any(f => string.Equals(f.Id, letter + n, StringComparison.OrdinalIgnoreCase))) return letter + n;
    }
}
