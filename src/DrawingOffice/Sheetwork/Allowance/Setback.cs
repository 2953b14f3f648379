namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// From a bend's tangent line to the line a person measures to, mm. Up to 90° that is where the two faces' surfaces would meet;
/// beyond, where that point runs away, it is the outermost part of the bend (the leg measured in the calliper), as in DIN 6935.
/// </summary>
public static class Setback
{
    public static double Outside(double angle, double radius, double thickness) => (radius + thickness) * Factor(angle);

    public static double Inside(double angle, double radius) => radius * Factor(angle);

    static double Factor(double angle) => Math.Abs(angle) <= Math.PI / 2 ? Math.Tan(Math.Abs(angle) / 2) : 1;

    /// <summary>What two outside legs add up to beyond the flat length, mm.</summary>
    public static double Deduction(double angle, double radius, double thickness, BendAllowance allowance) =>
        2 * Outside(angle, radius, thickness) - allowance.Length;
}
