using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey;

/// <summary>
/// What can be found on a flat part.
/// Point: a corner or pricked mark. Hole: centre and diameter. Slot: two end centres and a width.
/// Edge: the line through two corners, or a free straight edge. Arc: centre and radius, with or without two end corners.
/// </summary>
public enum FeatureKind { Point, Hole, Slot, Edge, Arc }

/// <summary>A feature as sketched. Only the id and kind are needed; the sketch is a start for the adjustment, never a reading.</summary>
/// <param name="Id">Unique on the sample; letters, digits, dash.</param>
public sealed record Feature(string Id, FeatureKind Kind)
{
    /// <summary>Rough place, mm: the point, the centre, or any point of a free edge.</summary>
    public Vec2? Sketch { get; init; }

    /// <summary>Rough direction of a slot's centre line or a free edge, radians from x.</summary>
    public double? SketchTurn { get; init; }

    /// <summary>Rough diameter, radius or slot width, mm.</summary>
    public double? SketchSize { get; init; }

    /// <summary>Rough distance between a slot's end centres, mm.</summary>
    public double? SketchLength { get; init; }

    /// <summary>First corner of an edge through two corners, or first end of an arc.</summary>
    public string? From { get; init; }

    /// <summary>Second corner of an edge through two corners, or second end of an arc.</summary>
    public string? To { get; init; }

    public FeatureCondition Condition { get; init; }

    /// <summary>Mean loss of metal where it is read (bent: standard deviation either way), mm, above 0; null: <see cref="UsualWear"/>.</summary>
    public double? Wear { get; init; }
}

/// <summary>Everything known of one sample: what is on it and what was read. Readings keep their order; their index is their place.</summary>
public sealed record Sample(string Id, string Title, ImmutableArray<Feature> Features, ImmutableArray<Reading> Readings)
{
    /// <summary>Frames of picks with a scale of their own; a frame that is not named here is true to scale.</summary>
    public ImmutableArray<PickFrame> Frames { get; init; } = [];
}
