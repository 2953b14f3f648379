namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>
/// What a tube is cut to meet. Heights run along the tube's axis, mm, from where the axis meets the axis or plane of the other; the tube
/// stands above. Angles go round the tube, radians, from the throat (the side of the smaller angle), anticlockwise seen from its square end.
/// </summary>
public abstract record Against
{
    /// <summary>Where the line at an angle and a radius meets the other, mm. Exact.</summary>
    public abstract double Height(double radius, double angle);

    /// <summary>The highest meeting anywhere in the wall: cut square to the wall here, the tube goes on as it is sawn.</summary>
    public virtual double Highest(double inner, double outer, double angle) => Math.Max(Height(inner, angle), Height(outer, angle));

    public double Height(Touching touching, double inner, double outer, double angle) => touching switch
    {
        Touching.Inside => Height(inner, angle),
        Touching.Outside => Height(outer, angle),
        _ => Highest(inner, outer, angle),
    };
}

/// <summary>A plane that the axis meets at an angle: a plate, or the plane of a mitre.</summary>
/// <param name="Angle">Between axis and plane, radians, over 0 up to π/2.</param>
/// <param name="Below">How far under the face the plane that is met lies, mm: a plate's thickness when the tube goes through it.</param>
public sealed record AgainstPlane(double Angle, double Below = 0) : Against
{
    public override double Height(double radius, double angle) => (radius * Math.Cos(angle) * Math.Cos(Angle) - Below) / Math.Sin(Angle);
}

/// <summary>
/// A round main. In its frame (x along it, z towards the branch) a branch point at height s is
/// (s cos β + r cos θ sin β, e + r sin θ, s sin β − r cos θ cos β), and y² + z² = R² gives s.
/// </summary>
/// <param name="Radius">R of the surface that is met, mm, at least r + |e|.</param>
/// <param name="Angle">β between the axes, radians.</param>
/// <param name="Offset">e, by which the axes miss each other, mm.</param>
public sealed record AgainstTube(double Radius, double Angle, double Offset) : Against
{
    public override double Height(double radius, double angle)
    {
        var (s, c) = Math.SinCos(angle);
        var y = Offset + radius * s;
        // Rounding must not make an equal tee imaginary at its widest.
        return (Math.Sqrt(Math.Max(0, (Radius - y) * (Radius + y))) + radius * c * Math.Cos(Angle)) / Math.Sin(Angle);
    }

    // The height bulges along the wall; where offset tubes cross the crown its top lies between the two edges.
    public override double Highest(double inner, double outer, double angle)
    {
        var (s, c) = Math.SinCos(angle);
        var ends = base.Highest(inner, outer, angle);
        if (Math.Abs(s) < 1e-12) return ends;
        var k = c * Math.Cos(Angle) / s;
        var r = (Radius * k / Math.Sqrt(1 + k * k) - Offset) / s;
        return r > inner && r < outer ? Math.Max(ends, Height(r, angle)) : ends;
    }

    /// <summary>Along the main from under the meeting of the axes, and round its surface from the line facing the branch, mm.</summary>
    public (double Along, double Round) OnMain(double radius, double angle)
    {
        var (s, c) = Math.SinCos(angle);
        var along = Height(radius, angle) * Math.Cos(Angle) + radius * c * Math.Sin(Angle);
        return (along, Radius * Math.Asin(Math.Clamp((Offset + radius * s) / Radius, -1, 1)));
    }
}
