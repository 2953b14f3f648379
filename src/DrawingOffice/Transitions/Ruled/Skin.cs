using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>
/// The skin that a sheet takes when it is drawn tight over two ends, in panels, once round. It is the side of their convex hull and so can be
/// laid flat without stretch wherever the ends stand, as long as neither end's plane cuts the other end. Where both ends have corners or
/// straight sides it comes out in flat panels and fans about corners, as a square to round is set out by hand.
/// </summary>
/// <param name="Panels">In order; the last ends where the first begins, once round both rims.</param>
public sealed record Skin(Rim First, Rim Second, ImmutableArray<Panel> Panels)
{
    /// <summary>Planes whose directions agree to this are one: flat panels are told from rolled ones by it, radians.</summary>
    const double SamePlane = 1e-9;

    /// <summary>Places nearer than this are one, in shares of a side.</summary>
    const double SamePlace = 1e-7;

    /// <returns>The skin, or why there is none.</returns>
    public static Parsed<Skin> Over(Rim first, Rim second)
    {
        if (Clearance(first, second, 1) is var above && !(above > 1e-6)) return Crossed("second end", above);
        if (Clearance(second, first, -1) is var below && !(below > 1e-6)) return Crossed("first end", below);
        var stops = Planes(first, second);
        var panels = ImmutableArray.CreateBuilder<Panel>();
        var (a, b) = (stops[0].First.First, stops[0].Second.First);
        var (endA, endB) = (a + first.Count, b + second.Count);
        void Advance(bool flat, double toA, double toB)
        {
            var (nextA, nextB) = (Onward(a, toA, first.Count), Onward(b, toB, second.Count));
            if (nextA > a || nextB > b) panels.Add(new(flat, a, nextA, b, nextB));
            (a, b) = (nextA, nextB);
        }
        foreach (var stop in stops)
        {
            Advance(false, stop.First.First, stop.Second.First);
            Advance(true, stop.First.Last, stop.Second.Last);
        }
        if (!(a <= endA + SamePlace && b <= endB + SamePlace)) return Refusal.Of("ends", "as they stand", "no sheet can be drawn tight over them; turn or move one end");
        if (endA - a > SamePlace || endB - b > SamePlace) panels.Add(new(false, a, endA, b, endB));
        return new Skin(first, second, panels.ToImmutable());
    }

    /// <summary>How far rim <paramref name="other"/> stands off the plane of <paramref name="rim"/>, mm; negative when it reaches through.</summary>
    static double Clearance(Rim rim, Rim other, int side)
    {
        var up = rim.Frame.Z * side;
        return other.Sides.Min(s => s switch
        {
            ArcSide a => (a.Centre - rim.Frame.Origin).Dot(up) - Math.Sqrt(a.U.Dot(up) * a.U.Dot(up) + a.V.Dot(up) * a.V.Dot(up)),
            _ => (s.At(0) - rim.Frame.Origin).Dot(up),
        });
    }

    static Refusal Crossed(string which, double by) => Refusal.Of($"{which}, at", $"{by:0.###} mm from the plane of the other",
        "each end must lie wholly on one side of the other's plane; move them apart or tilt them less");

    readonly record struct Plane(double Turn, Touched First, Touched Second);

    /// <summary>Every plane at which a side of either rim begins or ends, in order of the way it faces, seen along the first end's z.</summary>
    static List<Plane> Planes(Rim first, Rim second)
    {
        var found = new List<Plane>();
        void Add(Rim on, Rim other, int side)
        {
            for (var i = 0; i < on.Count; i++)
                for (var end = 0; end <= 1; end++)
                {
                    var (point, along) = (on.Sides[i].At(end), on.Sides[i].Along(end));
                    var (inward, up) = (on.Frame.Z.Cross(along), on.Frame.Z * side);
                    var touched = Touch.Of(point, inward, up, other);
                    var own = on.Sides[i] is StraightSide ? new Touched(i, i + 1) : new Touched(i + end, i + end);
                    var r = other.At(touched.First) - point;
                    // Square to the plane, outwards.
                    var normal = up * r.Dot(inward) - inward * r.Dot(up);
                    var turn = Math.Atan2(normal.Dot(first.Frame.Y), normal.Dot(first.Frame.X));
                    found.Add(side > 0 ? new(turn, own, touched) : new(turn, touched, own));
                }
        }
        Add(first, second, 1);
        Add(second, first, -1);
        found.Sort((p, q) => p.Turn.CompareTo(q.Turn));
        var merged = new List<Plane>();
        foreach (var plane in found)
            if (merged.Count > 0 && plane.Turn - merged[^1].Turn <= SamePlane) merged[^1] = Merge(merged[^1], plane);
            else merged.Add(plane);
        if (merged.Count > 1 && merged[0].Turn + Math.Tau - merged[^1].Turn <= SamePlane)
        {
            merged[0] = Merge(merged[^1], merged[0]);
            merged.RemoveAt(merged.Count - 1);
        }
        return merged;

        Plane Merge(Plane p, Plane q) => new(p.Turn, Union(p.First, q.First, first.Count), Union(p.Second, q.Second, second.Count));
    }

    /// <summary>Both stretches in one; they overlap or meet.</summary>
    static Touched Union(Touched p, Touched q, int n)
    {
        if (p.Last - p.First > SamePlace) return p;
        return q.Last - q.First > SamePlace || n == 0 ? q : p;
    }

    /// <summary>The same place, counted on from <paramref name="from"/>; one a hair behind is taken to be there.</summary>
    static double Onward(double from, double place, int n)
    {
        var on = place + n * Math.Ceiling((from - SamePlace - place) / n);
        return on <= from + SamePlace ? from : on;
    }
}
