using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>
/// A closed plane curve in space, bulging everywhere, walked anticlockwise about its frame's z. A place on it is a number: its whole part says
/// which side, the rest the share of that side; places go round and round.
/// </summary>
public sealed record Rim(ImmutableArray<RimSide> Sides, Motion3 Frame)
{
    public int Count => Sides.Length;

    public double Length => Sides.Sum(s => s.Length);

    public Vec3 At(double place)
    {
        var (side, share) = Split(place);
        return Sides[side].At(share);
    }

    /// <summary>The side a place lies on and its share of it. A whole number is the start of a side.</summary>
    public (int Side, double Share) Split(double place)
    {
        var whole = Math.Floor(place);
        return ((int)(((long)whole % Count + Count) % Count), place - whole);
    }

    /// <summary>The side turns into the next with a kink at this corner (the start of side <paramref name="corner"/>).</summary>
    public bool Sharp(int corner) =>
        Sides[(corner + Count - 1) % Count].Along(1).Cross(Sides[corner % Count].Along(0)).Length > 1e-9;

    /// <summary>Where the ray from the frame's origin at an angle from its x axis meets the rim, within 1e-12 of a side.</summary>
    public double PlaceAt(double angle)
    {
        for (var i = 0; i < Count; i++)
        {
            var from = Angle(Sides[i].At(0));
            var span = Turn(Angle(Sides[i].At(1)) - from);
            // The only side of a circle ends where it begins.
            if (Count == 1) span = Math.Tau;
            var wanted = Turn(angle - from);
            if (wanted > span + 1e-12) continue;
            var (low, high) = (0.0, 1.0);
            for (var k = 0; k < 60 && high - low > 1e-15; k++)
            {
                var middle = 0.5 * (low + high);
                if (Turn(Angle(Sides[i].At(middle)) - from) < wanted) low = middle;
                else high = middle;
            }
            var share = 0.5 * (low + high);
            return share < Near ? i : share > 1 - Near ? i + 1 : i + share;
        }
        return 0;
    }

    /// <summary>Direction of a point from the frame's origin, radians from its x axis.</summary>
    public double Angle(Vec3 point) => Frame.Local(point) is var p ? Math.Atan2(p.Y, p.X) : 0;

    /// <summary>Shares nearer an end than this are the end: far over the rounding of the search, far under anything cut.</summary>
    const double Near = 1e-9;

    // From 0 to 2π, with what rounding puts just under 0 left at 0.
    static double Turn(double angle)
    {
        var turn = angle - Math.Tau * Math.Floor(angle / Math.Tau);
        return turn > Math.Tau - 1e-12 ? 0 : turn;
    }
}
