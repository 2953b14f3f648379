using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>The plan as lines in space, mm, in the plan's frame; set-ups are not drawn.</summary>
public sealed record Wireframe(ImmutableArray<WireEdge> Edges, ImmutableArray<WireCircle> Circles, ImmutableArray<WireFace> Faces, ImmutableArray<WireTube> Tubes);

/// <summary>A straight edge. One without corners runs as far as the features beside it reach.</summary>
public sealed record WireEdge(string Id, Vec3 From, Vec3 To, bool Loose);

/// <summary>A hole's mouth.</summary>
/// <param name="Axis">Length 1.</param>
public sealed record WireCircle(string Id, Vec3 Centre, Vec3 Axis, double Radius, bool Loose);

/// <summary>A face, bounded by the hull of the features that lie on it; a square about its place where there are fewer than three.</summary>
/// <param name="Outline">In order, counter-clockwise seen from outside.</param>
public sealed record WireFace(string Id, Vec3 Normal, ImmutableArray<Vec3> Outline, bool Loose);

/// <summary>A cylinder between two places of its axis.</summary>
public sealed record WireTube(string Id, Vec3 From, Vec3 To, double Radius, bool Loose);
