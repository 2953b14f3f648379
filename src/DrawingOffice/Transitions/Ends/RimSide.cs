using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>One side of a rim in space, mm; shares run from 0 at its start to 1 at its end.</summary>
public abstract record RimSide
{
    public abstract Vec3 At(double share);

    /// <summary>Direction of travel, length 1.</summary>
    public abstract Vec3 Along(double share);

    /// <summary>Arc length, mm, to 1e-12 of itself.</summary>
    public abstract double Length { get; }

    /// <summary>Chords that the stretch between two shares needs to stay within <paramref name="error"/> mm; at least one for each 30° of turn.</summary>
    public abstract int Chords(double from, double to, double error);
}

public sealed record StraightSide(Vec3 From, Vec3 To) : RimSide
{
    public override Vec3 At(double share) => From + (To - From) * share;

    public override Vec3 Along(double share) => (To - From).Unit;

    public override double Length => From.DistanceTo(To);

    public override int Chords(double from, double to, double error) => 1;
}

/// <summary>Part of an ellipse: Centre + U cos θ + V sin θ.</summary>
/// <param name="U">To the end of one half-axis, mm.</param>
/// <param name="V">To the end of the other, square to U.</param>
/// <param name="Start">θ, radians.</param>
/// <param name="Sweep">Radians, positive, up to 2π.</param>
public sealed record ArcSide(Vec3 Centre, Vec3 U, Vec3 V, double Start, double Sweep) : RimSide
{
    public override Vec3 At(double share)
    {
        var (s, c) = Math.SinCos(Start + share * Sweep);
        return Centre + U * c + V * s;
    }

    public override Vec3 Along(double share) => Velocity(Start + share * Sweep).Unit;

    public override double Length => Quadrature.Over(Start, Start + Sweep, t => Velocity(t).Length);

    public override int Chords(double from, double to, double error)
    {
        // A chord over δ stands off by at most a (1 − cos δ/2) = 2 a sin²(δ/4), a the longer half-axis.
        var longer = Math.Max(U.Length, V.Length);
        var most = Math.Min(Math.PI / 6, 4 * Math.Asin(Math.Sqrt(Math.Min(1, error / (2 * longer)))));
        return Math.Max(1, (int)Math.Ceiling((to - from) * Sweep / most - 1e-9));
    }

    Vec3 Velocity(double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return V * c - U * s;
    }
}
