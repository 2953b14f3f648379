using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Points joined by straights, each corner with the radius of the arc that eases it; 0 leaves it sharp. mm.</summary>
readonly record struct Traverse(ImmutableArray<Vec2> Points, ImmutableArray<double> Radii)
{
    /// <summary>A corner that turns by less than this is a point on a straight, radians: a tenth of a micrometre over a metre.</summary>
    public const double Straight = 1e-10;

    public int Count => Points.Length;

    /// <summary>Left turn at point k, radians; 0 at the ends.</summary>
    public double Turn(int k)
    {
        if (k == 0 || k == Count - 1) return 0;
        var (a, b) = (Points[k] - Points[k - 1], Points[k + 1] - Points[k]);
        var turn = Math.Atan2(a.Cross(b), a.Dot(b));
        return Math.Abs(turn) < Straight ? 0 : turn;
    }

    /// <summary>To the left at point k, so long that both straights beside it move by 1.</summary>
    Vec2 Mitre(int k)
    {
        var before = (Points[Math.Max(k, 1)] - Points[Math.Max(k, 1) - 1]).Unit;
        var after = (Points[Math.Min(k, Count - 2) + 1] - Points[Math.Min(k, Count - 2)]).Unit;
        return (before + after).Left / (1 + before.Dot(after));
    }

    /// <summary>
    /// The far side, a distance to the left at each point. Arcs stay concentric where the distance is the same on both sides.
    /// </summary>
    /// <returns>Null when an arc has no radius left.</returns>
    public Traverse? Beside(ReadOnlySpan<double> left)
    {
        var points = ImmutableArray.CreateBuilder<Vec2>(Count);
        var radii = ImmutableArray.CreateBuilder<double>(Count);
        for (var k = 0; k < Count; k++)
        {
            points.Add(Points[k] + Mitre(k) * left[k]);
            var radius = Radii[k] > 0 ? Radii[k] - Math.Sign(Turn(k)) * left[k] : 0;
            if (Radii[k] > 0 && radius <= 0) return null;
            radii.Add(radius);
        }
        return new(points.MoveToImmutable(), radii.MoveToImmutable());
    }

    public Traverse? Beside(double left)
    {
        Span<double> all = stackalloc double[Count];
        all.Fill(left);
        return Beside(all);
    }

    /// <summary>The course of straights and arcs, and how far along it each point comes (a rounded one at the middle of its arc), or the point whose arc has no room.</summary>
    public (Course Course, ImmutableArray<double> Marks, int NoRoomAt) Rounded()
    {
        var steps = ImmutableArray.CreateBuilder<Step>();
        var marks = ImmutableArray.CreateBuilder<double>(Count);
        marks.Add(0);
        var (at, along) = (Points[0], 0.0);
        for (var k = 1; k < Count; k++)
        {
            var turn = Turn(k);
            var cut = Radii[k] > 0 ? Radii[k] * Math.Tan(Math.Abs(turn) / 2) : 0;
            var way = (Points[k] - Points[k - 1]).Unit;
            var straight = (Points[k] - way * cut - at).Dot(way);
            if (straight < -1e-9) return (new([]), [], Radii[k] > 0 && cut > 0 ? k : k - 1);
            if (straight > 1e-9) steps.Add(new(at, way.Angle, straight, 0));
            var arc = cut > 0 ? Radii[k] * Math.Abs(turn) : 0;
            if (arc > 0) steps.Add(new(Points[k] - way * cut, way.Angle, arc, turn / arc));
            along += Math.Max(straight, 0);
            marks.Add(along + arc / 2);
            along += arc;
            at = arc > 0 ? steps[^1].To : Points[k];
        }
        return (new(steps.ToImmutable()), marks.MoveToImmutable(), -1);
    }
}
