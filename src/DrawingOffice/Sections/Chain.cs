using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>
/// An open line of straights and arcs, mm: the middle of a sheet seen end-on. Side i runs from corner i to the next with the bulge of corner i;
/// the last corner has none. A closed line ends where it starts.
/// </summary>
public sealed record Chain(ImmutableArray<Corner> Corners)
{
    /// <summary>Straights through the points, rounded at each by a radius (0 sharp; the ends' radii are passed over unless closed).</summary>
    /// <returns>The line, or which corner has too little room.</returns>
    public static Parsed<Chain> Round(ReadOnlySpan<Vec2> points, ReadOnlySpan<double> radii, bool closed = false)
    {
        var used = radii.ToArray();
        if (!closed) (used[0], used[^1]) = (0, 0);
        var loop = Fillet.Round(points, used);
        if (loop.Refusal is { } refusal) return refusal;
        var corners = loop.Value.Corners;
        return new Chain(closed ? corners.Add(new(corners[0].At)) : corners);
    }

    public Vec2 Start => Corners[0].At;

    public Vec2 End => Corners[^1].At;

    public int Count => Corners.Length - 1;

    /// <summary>mm.</summary>
    public double Length
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < Count; i++) sum += this[i].Length;
            return sum;
        }
    }

    /// <summary>Least radius of its arcs, mm; infinite when it has none.</summary>
    public double LeastRadius
    {
        get
        {
            var least = double.PositiveInfinity;
            for (var i = 0; i < Count; i++)
                if (this[i].Bulge != 0) least = Math.Min(least, this[i].Radius);
            return least;
        }
    }

    internal Side this[int side] => new(Corners[side].At, Corners[side + 1].At, Corners[side].Bulge);

    /// <summary>The line set off to the left (right when negative), sharp corners mitred, arcs about their centres.</summary>
    /// <param name="distance">mm; at most the radius of arcs that turn that way.</param>
    public Chain Off(double distance, bool closed = false)
    {
        var corners = ImmutableArray.CreateBuilder<Corner>(Corners.Length);
        for (var i = 0; i < Corners.Length; i++)
        {
            var after = i < Count ? this[i].StartsAlong : closed ? this[0].StartsAlong : this[i - 1].EndsAlong;
            var before = i > 0 ? this[i - 1].EndsAlong : closed ? this[Count - 1].EndsAlong : after;
            var mitre = (before.Left + after.Left) / (1 + before.Dot(after));
            corners.Add(new(Corners[i].At + distance * mitre, Corners[i].Bulge));
        }
        return new(corners.MoveToImmutable());
    }

    /// <summary>Round the metal of a sheet with this middle, anticlockwise; for a closed line its outer edge first, then the inner one.</summary>
    public ImmutableArray<Loop> Edges(double thickness, bool closed = false)
    {
        var (right, left) = (Off(-thickness / 2, closed), Off(thickness / 2, closed));
        if (!closed)
        {
            var back = new Loop(left.Corners).Reversed().Corners;
            // The last right corner runs square across to the last left one; reversing has moved each bulge to the other end of its side.
            return [new([.. right.Corners[..^1], new(right.End), .. back[..^1], new(back[^1].At)])];
        }
        var (a, b) = (new Loop(right.Corners[..^1]), new Loop(left.Corners[..^1]));
        if (a.SignedArea < 0) (a, b) = (a.Reversed(), b.Reversed());
        return a.Area >= b.Area ? [a, b] : [b, a];
    }

    /// <summary>Corners joined by chords; every point of the line is within <paramref name="error"/> mm of them.</summary>
    public ImmutableArray<Vec2> Flatten(double error)
    {
        var points = ImmutableArray.CreateBuilder<Vec2>();
        for (var i = 0; i < Count; i++)
        {
            points.Add(this[i].A);
            if (this[i] is { Bulge: not 0 } side && side.A != side.B) Arc.Of(side.A, side.B, side.Bulge).AddBetween(points, error);
        }
        points.Add(End);
        return points.ToImmutable();
    }
}
