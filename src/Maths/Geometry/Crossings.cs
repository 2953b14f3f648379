using System.Collections.Immutable;

namespace WitnessMark.Maths.Geometry;

/// <summary>Two sides of one polygon that cross or touch, by index, and where.</summary>
public readonly record struct Crossing(int First, int Second, Vec2 At);

/// <summary>
/// Where a closed polygon meets itself. Sides are swept along the longer extent of the polygon, so that only sides that
/// overlap in that direction are compared: about n log n for an outline that is drawn out, n² only when all sides overlap.
/// </summary>
public static class Crossings
{
    /// <summary>Sides nearer than this are taken to touch, mm: far under what a cutter resolves, far over rounding at 10 m.</summary>
    public const double Touch = 1e-7;

    /// <param name="most">Stops after this many.</param>
    public static ImmutableArray<Crossing> Of(ReadOnlySpan<Vec2> polygon, int most = 16)
    {
        var n = polygon.Length;
        var sides = new Side[n];
        var (lowX, highX, lowY, highY) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
        foreach (var p in polygon)
        {
            (lowX, highX) = (Math.Min(lowX, p.X), Math.Max(highX, p.X));
            (lowY, highY) = (Math.Min(lowY, p.Y), Math.Max(highY, p.Y));
        }
        var alongX = highX - lowX >= highY - lowY;
        for (var i = 0; i < n; i++) sides[i] = Side.Of(i, polygon[i], polygon[(i + 1) % n], alongX);
        Array.Sort(sides, static (a, b) => a.Low.CompareTo(b.Low));
        return Sweep(sides, most);
    }

    static ImmutableArray<Crossing> Sweep(Side[] sides, int most)
    {
        var found = ImmutableArray.CreateBuilder<Crossing>();
        var active = new List<int>();
        for (var i = 0; i < sides.Length && found.Count < most; i++)
        {
            var kept = 0;
            for (var k = 0; k < active.Count; k++)
            {
                ref var other = ref sides[active[k]];
                if (other.High + Touch < sides[i].Low) continue;
                active[kept++] = active[k];
                if (other.Left <= sides[i].Right + Touch && sides[i].Left <= other.Right + Touch && Meet(other, sides[i], sides.Length) is { } at)
                    found.Add(new(Math.Min(other.Index, sides[i].Index), Math.Max(other.Index, sides[i].Index), at));
            }
            active.RemoveRange(kept, active.Count - kept);
            active.Add(i);
        }
        return found.ToImmutable();
    }

    static Vec2? Meet(in Side p, in Side q, int n)
    {
        if ((p.Index + 1) % n == q.Index) return FoldsBack(p, q);
        if ((q.Index + 1) % n == p.Index) return FoldsBack(q, p);
        if (Plane2.Distance(p.A, p.B, q.A, q.B) > Touch) return null;
        var at = Plane2.Meet(p.A, p.B - p.A, q.A, q.B - q.A);
        return at is { } x && Plane2.Distance(x, p.A, p.B) <= 1 ? x : 0.5 * (q.A + q.B);
    }

    // Neighbours share a corner; they offend only when the second runs back along the first.
    static Vec2? FoldsBack(in Side first, in Side second)
    {
        var (a, b) = (first.A - first.B, second.B - second.A);
        if (a.Dot(b) <= 0) return null;
        var shorter = a.Length < b.Length ? a : b;
        return Math.Abs(a.Cross(b)) <= Touch * (a.Length + b.Length - shorter.Length) ? second.A + shorter : null;
    }

    readonly record struct Side(int Index, Vec2 A, Vec2 B, double Low, double High, double Left, double Right)
    {
        public static Side Of(int index, Vec2 a, Vec2 b, bool alongX) => alongX
            ? new(index, a, b, Math.Min(a.X, b.X), Math.Max(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y))
            : new(index, a, b, Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y), Math.Min(a.X, b.X), Math.Max(a.X, b.X));
    }
}
