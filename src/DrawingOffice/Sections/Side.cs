using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>One straight or circular side from a to b, mm; <paramref name="Bulge"/> is tan(sweep/4).</summary>
readonly record struct Side(Vec2 A, Vec2 B, double Bulge)
{
    public double Sweep => 4 * Math.Atan(Bulge);

    /// <summary>mm.</summary>
    public double Length => Bulge == 0 ? A.DistanceTo(B) : Math.Abs(Sweep) * Radius;

    public double Radius => A.DistanceTo(B) * (1 + Bulge * Bulge) / (4 * Math.Abs(Bulge));

    public Vec2 At(double share) => Bulge == 0 || A == B ? A + share * (B - A) : Arc.Of(A, B, Bulge).At(share);

    /// <summary>Change of place per share.</summary>
    public Vec2 Pace(double share) => Bulge == 0 || A == B ? B - A : Sweep * (At(share) - Arc.Of(A, B, Bulge).Centre).Left;

    /// <summary>Direction of travel where it begins and ends.</summary>
    public Vec2 StartsAlong => (B - A).Unit.Turned(-Sweep / 2);

    public Vec2 EndsAlong => (B - A).Unit.Turned(Sweep / 2);

    /// <summary>From a to the share.</summary>
    public Side To(double share) => new(A, At(share), Math.Tan(Sweep * share / 4));

    /// <summary>From the share to b.</summary>
    public Side From(double share) => new(At(share), B, Math.Tan(Sweep * (1 - share) / 4));

    /// <summary>Twice the area swept from a pole, mm²; positive when the side goes round it anticlockwise.</summary>
    public double TwiceSwept(Vec2 pole) => (A - pole).Cross(B - pole) + (Bulge == 0 || A == B ? 0 : Arc.Of(A, B, Bulge).TwiceSegmentArea);

    /// <summary>Share of the point that lies nearest to a place.</summary>
    public double Nearest(Vec2 p)
    {
        if (A == B) return 0;
        if (Bulge == 0) return Math.Clamp((p - A).Dot(B - A) / (B - A).Dot(B - A), 0, 1);
        var arc = Arc.Of(A, B, Bulge);
        var turn = Math.Sign(Sweep) * ((p - arc.Centre).Angle - arc.Start);
        turn -= 2 * Math.PI * Math.Floor(turn / (2 * Math.PI));
        var share = turn / Math.Abs(Sweep);
        return share <= 1 ? share : A.DistanceTo(p) <= B.DistanceTo(p) ? 0 : 1;
    }

    /// <summary>How far it reaches in a direction of length 1, mm from the origin.</summary>
    public double Reach(Vec2 towards)
    {
        var reach = Math.Max(A.Dot(towards), B.Dot(towards));
        if (Bulge == 0 || A == B) return reach;
        var arc = Arc.Of(A, B, Bulge);
        var turn = Math.Sign(Sweep) * (towards.Angle - arc.Start);
        turn -= 2 * Math.PI * Math.Floor(turn / (2 * Math.PI));
        return turn <= Math.Abs(Sweep) ? arc.Centre.Dot(towards) + arc.Radius : reach;
    }
}
