using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.PrintRoom.Pictorial;

/// <summary>
/// What part of a segment the facets of a body hide, exactly: along a segment a facet begins or ceases to hide only where the segment
/// crosses one of its sides on the paper or passes through its plane, so the segment is cut there and each piece tried at its middle.
/// All in the eye's frame: x and y on the paper, z towards the eye, mm.
/// </summary>
sealed class HiddenLines
{
    /// <summary>A facet hides what lies this far behind it, mm on paper: an edge must not be hidden by its own facets' rounding.</summary>
    const double Behind = 1e-6;

    /// <summary>Facets whose face turns from the eye by less than this (cosine) are seen as a line and hide nothing.</summary>
    const double EdgeOn = 1e-9;

    readonly Screen[] _screens;

    /// <param name="normals">Of each facet, of any length.</param>
    public HiddenLines(Facet[] seen, Vec3[] normals)
    {
        _screens = [.. seen.Zip(normals).Where(f => f.Second.Z > EdgeOn * f.Second.Length).Select(f => new Screen(f.First, f.Second.Unit))];
        Array.Sort(_screens, (a, b) => a.Left.CompareTo(b.Left));
    }

    /// <summary>Parts of the segment from a to b that are seen, as shares 0 to 1, in order.</summary>
    public List<(double From, double To)> Seen(Vec3 a, Vec3 b)
    {
        var hidden = new List<(double From, double To)>();
        var (left, right) = (Math.Min(a.X, b.X), Math.Max(a.X, b.X));
        var (low, high) = (Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y));
        var far = Math.Min(a.Z, b.Z);
        foreach (var s in _screens)
        {
            if (s.Left > right) break;
            if (s.Right < left || s.Low > high || s.High < low || s.Near < far + Behind) continue;
            s.Hide(a, b, hidden);
        }
        return Rest(hidden);
    }

    static List<(double, double)> Rest(List<(double From, double To)> hidden)
    {
        hidden.Sort();
        var (seen, at) = (new List<(double, double)>(), 0.0);
        foreach (var (from, to) in hidden)
        {
            if (from > at + 1e-9) seen.Add((at, from));
            at = Math.Max(at, to);
        }
        if (at < 1 - 1e-9) seen.Add((at, 1));
        return seen;
    }

    /// <summary>A facet that faces the eye, flattened on the paper.</summary>
    sealed class Screen
    {
        readonly Ring[] _loops;
        readonly Vec3 _normal, _point;

        public double Left { get; }
        public double Right { get; }
        public double Low { get; }
        public double High { get; }

        /// <summary>Its point nearest to the eye.</summary>
        public double Near { get; }

        public Screen(Facet f, Vec3 normal)
        {
            _loops = [.. f.Loops.Select(Ring.Of)];
            (_normal, _point) = (normal, f.Loops[0][0]);
            (Left, Right, Low, High) = (_loops[0].Left, _loops[0].Right, _loops[0].Low, _loops[0].High);
            Near = f.Loops[0].Max(p => p.Z);
        }

        // How far a point lies before (+) or behind (−) the facet's plane along the line of sight.
        double Before(Vec3 p) => (p - _point).Dot(_normal) / _normal.Z;

        public void Hide(Vec3 a, Vec3 b, List<(double, double)> hidden)
        {
            var (before, after) = (Before(a), Before(b));
            if (before > -Behind && after > -Behind) return;
            List<double> cuts = [0, 1];
            if ((before < 0) != (after < 0)) cuts.Add(before / (before - after));
            var (p, q) = (new Vec2(a.X, a.Y), new Vec2(b.X, b.Y));
            foreach (var loop in _loops)
                if (loop.Meets(p, q)) AddCrossings(loop.Points, p, q, cuts);
            cuts.Sort();
            for (var i = 1; i < cuts.Count; i++)
            {
                if (cuts[i] - cuts[i - 1] < 1e-12) continue;
                var middle = 0.5 * (cuts[i - 1] + cuts[i]);
                if (before + middle * (after - before) < -Behind && Covers(p + middle * (q - p))) hidden.Add((cuts[i - 1], cuts[i]));
            }
        }

        static void AddCrossings(Vec2[] loop, Vec2 p, Vec2 q, List<double> cuts)
        {
            var d = q - p;
            for (int i = 0, j = loop.Length - 1; i < loop.Length; j = i++)
            {
                var (u, v) = (d.Cross(loop[j] - p), d.Cross(loop[i] - p));
                if (u > 0 == v > 0) continue;
                var side = loop[i] - loop[j];
                var t = (loop[j] - p).Cross(side) / d.Cross(side);
                if (t is > 0 and < 1) cuts.Add(t);
            }
        }

        bool Covers(Vec2 p)
        {
            var inside = false;
            foreach (var loop in _loops)
                if (loop.Meets(p, p)) inside ^= Plane2.Contains(loop.Points, p);
            return inside;
        }
    }

    /// <summary>One loop of a facet on the paper. A face may have many holes, and few of them lie near a segment.</summary>
    readonly record struct Ring(Vec2[] Points, double Left, double Right, double Low, double High)
    {
        public static Ring Of(ImmutableArray<Vec3> loop)
        {
            var points = new Vec2[loop.Length];
            var (left, right, low, high) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
            for (var i = 0; i < points.Length; i++)
            {
                var p = points[i] = new(loop[i].X, loop[i].Y);
                (left, right, low, high) = (Math.Min(left, p.X), Math.Max(right, p.X), Math.Min(low, p.Y), Math.Max(high, p.Y));
            }
            return new(points, left, right, low, high);
        }

        public bool Meets(Vec2 p, Vec2 q) =>
            Math.Min(p.X, q.X) <= Right && Math.Max(p.X, q.X) >= Left && Math.Min(p.Y, q.Y) <= High && Math.Max(p.Y, q.Y) >= Low;
    }
}
