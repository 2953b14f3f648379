using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>The flat length of a folded section (angle, U, Z …) from its outside legs: the check that a person does by hand.</summary>
public static class Section
{
    /// <param name="legs">Outside, mm; one more than there are bends.</param>
    /// <param name="bends">Angle from flat (radians, either sign) and inside radius, mm.</param>
    /// <returns>Sum of the legs less the bend deductions, mm.</returns>
    public static Parsed<double> FlatLength(ReadOnlySpan<double> legs, ReadOnlySpan<(double Angle, double Radius)> bends, double thickness, BendMethod method)
    {
        if (legs.Length != bends.Length + 1) return Refusal.Of("legs", $"{legs.Length}", $"give {bends.Length + 1} legs for {bends.Length} bends");
        var length = 0.0;
        foreach (var leg in legs) length += leg;
        foreach (var (angle, radius) in bends)
        {
            var allowance = method.For(angle, radius, thickness);
            if (!allowance.Ok) return allowance.Refusal!;
            length -= Setback.Deduction(angle, radius, thickness, allowance.Value);
        }
        return length;
    }
}
