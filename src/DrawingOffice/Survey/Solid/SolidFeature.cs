using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>
/// What can be found on a part in space.
/// Point: a corner or pricked mark. Hole: centre of its mouth, axis, diameter. Plane: a flat face. Edge: the line through two
/// corners, or where two faces meet, or a free straight edge. Cylinder: axis and diameter of a tube, pin or boss.
/// SetUp: the surface plate as the part once stood on it, with unknown tilt and height; not a feature of the part itself.
/// </summary>
public enum SolidKind { Point, Hole, Plane, Edge, Cylinder, SetUp }

/// <summary>A feature as roughly sketched. Only the id and kind are needed; the sketch is a start for the adjustment, never a reading.</summary>
/// <param name="Id">Unique on the sample; letters, digits, dash.</param>
public sealed record SolidFeature(string Id, SolidKind Kind)
{
    /// <summary>Rough place, mm: the point, the hole's centre, or any point of the face, edge or axis.</summary>
    public Vec3? Sketch { get; init; }

    /// <summary>Rough direction, of any length: a face's outward normal, a hole's, edge's or cylinder's direction, a set-up's upward.</summary>
    public Vec3? SketchDirection { get; init; }

    /// <summary>Rough diameter, mm.</summary>
    public double? SketchSize { get; init; }

    /// <summary>Face that it lies on: a point or edge lies in it; a hole has its centre in it and is drilled square to it.</summary>
    public string? On { get; init; }

    /// <summary>An edge's first corner, or the first of the two faces that meet in it.</summary>
    public string? From { get; init; }

    /// <summary>An edge's second corner, or the second face.</summary>
    public string? To { get; init; }
}

/// <summary>A face that was surveyed flat: its features lie on the face and its readings join the adjustment. A feature of the same name in both is the same.</summary>
/// <param name="Plane">The face.</param>
/// <param name="Sample">Points, holes and edges; a slot or an arc is refused.</param>
public sealed record FlatFace(string Plane, Sample Sample)
{
    /// <summary>Rough direction in space of the flat sketch's x; needed only where fewer than two of its features are sketched in space.</summary>
    public Vec3? Along { get; init; }
}

/// <summary>Everything known of one sample in space: what is on it and what was read. Readings keep their order; their index is their place.</summary>
public sealed record SolidSample(string Id, string Title, ImmutableArray<SolidFeature> Features, ImmutableArray<SolidReading> Readings)
{
    public ImmutableArray<FlatFace> Faces { get; init; } = [];
}
