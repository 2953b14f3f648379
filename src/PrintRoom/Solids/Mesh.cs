using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Solids;

/// <summary>A triangle by the places of its corners, anticlockwise seen from outside.</summary>
public readonly record struct Triangle(int A, int B, int C);

/// <summary>A surface of triangles, mm.</summary>
public sealed record Mesh(ImmutableArray<Vec3> Points, ImmutableArray<Triangle> Triangles)
{
    public (Vec3 A, Vec3 B, Vec3 C) Corners(Triangle t) => (Points[t.A], Points[t.B], Points[t.C]);

    /// <summary>Outward, length 1; zero for a triangle without area.</summary>
    public Vec3 Normal(Triangle t)
    {
        var (a, b, c) = Corners(t);
        return (b - a).Cross(c - a).Unit;
    }
}
