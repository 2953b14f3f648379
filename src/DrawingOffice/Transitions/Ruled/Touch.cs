using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>Places on a rim that a plane touches: one, or the whole of a straight side.</summary>
public readonly record struct Touched(double First, double Last);

/// <summary>
/// The plane that lies along one rim at a point and leans over until it touches the other: with tangents a and b and the line r between the
/// points it is the plane where det(a, b, r) = 0. Sheet that is stretched tight over both rims lies straight along r. On arcs the point is
/// found in closed form: the lean (d·w)/(d·u) is a ratio of two sums in cos θ and sin θ, and its extremes solve A cos θ + B sin θ + C = 0.
/// Worst error of a place: about 1e-9 of a side, 3e-6 rad beside the end of an arc.
/// </summary>
public static class Touch
{
    // Leans nearer than this (relative) are one: a thousand times the rounding of the ratio.
    const double Same = 1e-12;

    // An arc's point nearer its end than this is the end; there the leans agree within Same.
    const double AtEnd = 3e-6;

    /// <param name="point">On the one rim.</param>
    /// <param name="inward">In its plane, square to it there, towards its inside.</param>
    /// <param name="up">Square to its plane, towards the other rim.</param>
    /// <param name="other">Wholly on the upper side.</param>
    public static Touched Of(Vec3 point, Vec3 inward, Vec3 up, Rim other)
    {
        double Lean(Vec3 p) => (p - point).Dot(inward) / (p - point).Dot(up);

        var n = other.Count;
        // A whole ellipse has no straight side to be confused with.
        var atEnd = n == 1 ? 0 : AtEnd;
        var (least, place, atCorner) = (double.PositiveInfinity, 0.0, false);
        void Consider(double p, double lean, bool corner)
        {
            if (lean < least) (least, place, atCorner) = (lean, p, corner);
        }
        for (var i = 0; i < n; i++)
        {
            Consider(i, Lean(other.Sides[i].At(0)), true);
            if (other.Sides[i] is ArcSide arc)
                foreach (var share in Extremes(arc, point, inward, up))
                    if (share * arc.Sweep > atEnd && (1 - share) * arc.Sweep > atEnd) Consider(i + share, Lean(arc.At(share)), false);
        }
        if (!atCorner) return new(place, place);
        // A whole side may lie in the plane: its other end then leans as much.
        var c = (int)place;
        bool Flat(int side, int end) => other.Sides[side] is StraightSide && Lean(other.Sides[end].At(0)) - least <= Same * (1 + Math.Abs(least));
        if (Flat(c, (c + 1) % n)) return new(c, c + 1);
        return Flat((c + n - 1) % n, (c + n - 1) % n) ? new(c - 1, c) : new(c, c);
    }

    static IEnumerable<double> Extremes(ArcSide arc, Vec3 point, Vec3 w, Vec3 u)
    {
        var d = arc.Centre - point;
        var (p0, p1, p2) = (d.Dot(w), arc.U.Dot(w), arc.V.Dot(w));
        var (q0, q1, q2) = (d.Dot(u), arc.U.Dot(u), arc.V.Dot(u));
        var (a, b, c) = (p2 * q0 - p0 * q2, p0 * q1 - p1 * q0, p2 * q1 - p1 * q2);
        var middle = Math.Atan2(b, a);
        var half = Math.Acos(Math.Clamp(-c / Math.Sqrt(a * a + b * b), -1, 1));
        foreach (var angle in new[] { middle - half, middle + half })
        {
            var turn = (angle - arc.Start) % Math.Tau;
            yield return (turn < 0 ? turn + Math.Tau : turn) / arc.Sweep;
        }
    }
}
