using System.Collections.Immutable;

namespace WitnessMark.Maths.Geometry;

/// <summary>
/// A corner of a closed outline and how the side that leaves it runs to the next corner.
/// </summary>
/// <param name="Bulge">tan(sweep/4) of that side: 0 straight, positive an arc turning anticlockwise, 1 half a circle (the usual interchange form).</param>
public readonly record struct Corner(Vec2 At, double Bulge = 0);

/// <summary>
/// A closed outline of straight and circular sides, mm. Anticlockwise when it bounds material.
/// Side i runs from corner i to corner i + 1, the last one back to corner 0.
/// </summary>
public sealed record Loop(ImmutableArray<Corner> Corners)
{
    public static Loop Of(params ReadOnlySpan<Vec2> points)
    {
        var corners = ImmutableArray.CreateBuilder<Corner>(points.Length);
        foreach (var p in points) corners.Add(new(p));
        return new(corners.MoveToImmutable());
    }

    public static Loop Rectangle(double width, double height) => Of(new(0, 0), new(width, 0), new(width, height), new(0, height));

    public static Loop Circle(Vec2 centre, double radius) =>
        new([new(new(centre.X + radius, centre.Y), 1), new(new(centre.X - radius, centre.Y), 1)]);

    public int Count => Corners.Length;

    public Vec2 Start(int side) => Corners[side].At;

    public Vec2 End(int side) => Corners[(side + 1) % Count].At;

    public bool Straight(int side) => Corners[side].Bulge == 0;

    /// <summary>Exact area, mm²; positive when anticlockwise.</summary>
    public double SignedArea
    {
        get
        {
            // About the first corner: a far-off outline loses no digits.
            var origin = Corners[0].At;
            var twice = 0.0;
            for (var i = 0; i < Count; i++)
            {
                twice += (Start(i) - origin).Cross(End(i) - origin);
                if (!Straight(i)) twice += Arc.Of(Start(i), End(i), Corners[i].Bulge).TwiceSegmentArea;
            }
            return twice / 2;
        }
    }

    public double Area => Math.Abs(SignedArea);

    /// <summary>The same outline walked the other way.</summary>
    public Loop Reversed()
    {
        var corners = ImmutableArray.CreateBuilder<Corner>(Count);
        for (var i = Count - 1; i >= 0; i--) corners.Add(new(Corners[i].At, -Corners[(i + Count - 1) % Count].Bulge));
        return new(corners.MoveToImmutable());
    }

    public Loop Moved(Pose2 pose)
    {
        var corners = ImmutableArray.CreateBuilder<Corner>(Count);
        foreach (var c in Corners) corners.Add(c with { At = pose.Map(c.At) });
        return new(corners.MoveToImmutable());
    }

    /// <summary>Corners joined by chords; every point of the outline is within <paramref name="error"/> mm of the chords.</summary>
    public ImmutableArray<Vec2> Flatten(double error)
    {
        var points = ImmutableArray.CreateBuilder<Vec2>(Count);
        for (var i = 0; i < Count; i++)
        {
            points.Add(Start(i));
            if (!Straight(i)) Arc.Of(Start(i), End(i), Corners[i].Bulge).AddBetween(points, error);
        }
        return points.ToImmutable();
    }
}
