using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Forming;

/// <summary>
/// How far a bend opens when the tool lets go: Ri/Rf = 4X³ − 3X + 1, X = Ri·Y/(E·T), for a sheet bent by a moment alone, elastic up to the
/// yield Y and yielding without hardening beyond (source: the usual textbook relation, docs/guide/spring-back.md). Lengths mm, stresses MPa,
/// angles radians from flat. Holds for 0 ≤ X &lt; 0.5; from there on the sheet springs flat, which is refused. It knows nothing of
/// hardening, of stretching over the tool and of sharp bends (R under about 2 T), where measured bends open less or more by about a third.
/// </summary>
/// <remarks>With X = sin φ the cubic is 1 − sin 3φ, so that both ways are solved without iteration and without loss of digits.</remarks>
public static class SpringBack
{
    /// <summary>X at which nothing stays bent.</summary>
    public const double Elastic = 0.5;

    /// <summary>A bend this many thicknesses long is held in plane strain (common practice).</summary>
    public const double WideFrom = 8;

    /// <summary>E/(1 − ν²) for a bend at least <see cref="WideFrom"/> thicknesses long, else E; MPa.</summary>
    public static double Stiffness(double modulus, double poisson, double bendLength, double thickness) =>
        bendLength >= WideFrom * thickness ? modulus / (1 - poisson * poisson) : modulus;

    /// <summary>Share of the curvature that stays, Ri/Rf, for 0 ≤ X &lt; 0.5.</summary>
    public static double Kept(double x) => 1 - Math.Sin(3 * Math.Asin(x));

    /// <summary>X of a bend that keeps this share of its curvature, over 0 to 1; the other way of <see cref="Kept"/>.</summary>
    public static double Measure(double kept) => Math.Sin(Math.Asin(1 - kept) / 3);

    /// <summary>Inside radius after release, mm, of a sheet bent to <paramref name="setRadius"/>.</summary>
    /// <param name="yield">MPa.</param>
    /// <param name="modulus">MPa; <see cref="Stiffness"/> of a wide bend.</param>
    public static Parsed<double> FinalRadius(double setRadius, double thickness, double yield, double modulus)
    {
        if (Wrong("set radius", setRadius, thickness, yield, modulus) is { } refusal) return refusal;
        var x = setRadius * yield / (modulus * thickness);
        if (x >= Elastic)
            return Refusal.Of("set radius", $"{setRadius:0.###} mm", $"the sheet springs flat again from {Elastic * modulus * thickness / yield:0.#} mm on; bend it sharper");
        return setRadius / Kept(x);
    }

    /// <summary>Inside radius to bend to, mm, so that <paramref name="finalRadius"/> stays; always less, and always inside the relation's range.</summary>
    /// <param name="yield">MPa.</param>
    /// <param name="modulus">MPa; <see cref="Stiffness"/> of a wide bend.</param>
    public static Parsed<double> FormerRadius(double finalRadius, double thickness, double yield, double modulus)
    {
        if (Wrong("final radius", finalRadius, thickness, yield, modulus) is { } refusal) return refusal;
        // X = a·sin ψ turns 4X³ − (3 + 1/(c·Rf))·X + 1 = 0, c = Y/(E·T), into sin 3ψ = 1/a³: its one root under 0.5.
        var c = yield / (modulus * thickness);
        var a = Math.Sqrt(1 + 1 / (3 * c * finalRadius));
        return a * Math.Sin(Math.Asin(1 / (a * a * a)) / 3) / c;
    }

    /// <summary>Angle after release: the arc at mid-thickness keeps its length (common practice).</summary>
    public static double FinalAngle(double setAngle, double setRadius, double finalRadius, double thickness) =>
        setAngle * (setRadius + thickness / 2) / (finalRadius + thickness / 2);

    /// <summary>Angle to bend to so that <paramref name="finalAngle"/> stays.</summary>
    public static double SetAngle(double finalAngle, double setRadius, double finalRadius, double thickness) =>
        finalAngle * (finalRadius + thickness / 2) / (setRadius + thickness / 2);

    static Refusal? Wrong(string name, double radius, double thickness, double yield, double modulus) =>
        Positive(name, radius) ?? Positive("thickness", thickness) ?? Positive("yield", yield) ?? Positive("modulus", modulus);

    static Refusal? Positive(string field, double value) =>
        value > 0 && double.IsFinite(value) ? null : Refusal.Of(field, $"{value}", "give a number above 0");
}
