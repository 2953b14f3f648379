using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A line across a strip by the index of its point on either edge.</summary>
/// <param name="Element">A straight line of the true surface; otherwise only the diagonal of a piece between two of them.</param>
public readonly record struct Rung(int First, int Second, bool Element);

/// <summary>
/// A strip of flat triangles between two edges in space. From one rung to the next one point moves on, so that each pair bounds a
/// triangle. The outside is on the right hand of the first edge, seen with the second edge above it.
/// </summary>
/// <param name="First">Points along the first end, mm.</param>
/// <param name="Second">Points along the second end, mm.</param>
public sealed record Strip(ImmutableArray<Vec3> First, ImmutableArray<Vec3> Second, ImmutableArray<Rung> Rungs)
{
    public int Triangles => Rungs.Length - 1;
}

/// <summary>A strip laid flat, seen from the inside of the shape: all bends of a hollow shape then fold up.</summary>
/// <param name="Angles">At each rung from flat, radians, positive up; 0 at the first and the last.</param>
public sealed record FlatStrip(ImmutableArray<Vec2> First, ImmutableArray<Vec2> Second, ImmutableArray<Rung> Rungs, ImmutableArray<double> Angles);
