using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// The length of flat sheet that one bend takes up between its tangent lines.
/// </summary>
/// <param name="Length">Bend allowance, mm.</param>
/// <param name="Std">Its standard uncertainty, mm; null where the method states none (a rule from a book).</param>
/// <param name="NeutralAxis">K: the layer that keeps its length, from the inside, as a share of the thickness.</param>
/// <param name="Method">Rule and source, in words.</param>
/// <param name="Validity">Where the rule holds.</param>
public sealed record BendAllowance(double Length, double? Std, double NeutralAxis, string Method, string Validity, ImmutableArray<string> Cautions);

/// <summary>A way to find bend allowances. All lengths mm, angles radians from flat.</summary>
public abstract record BendMethod
{
    /// <param name="angle">From flat, either sign, 0 &lt; |angle| ≤ π.</param>
    /// <param name="radius">Inside radius, mm, at least 0.</param>
    /// <param name="thickness">mm, positive.</param>
    /// <returns>The allowance, or why the method gives none there.</returns>
    public Parsed<BendAllowance> For(double angle, double radius, double thickness)
    {
        var turn = Math.Abs(angle);
        if (!(turn > 0 && turn <= Math.PI + 1e-12)) return Refusal.Of("bend angle", $"{angle * 180 / Math.PI:0.###}°", "give the bend from flat, up to 180°");
        if (!(radius >= 0) || !double.IsFinite(radius)) return Refusal.Of("inside radius", $"{radius}", "give 0 or more, mm");
        if (!(thickness > 0) || !double.IsFinite(thickness)) return Refusal.Of("thickness", $"{thickness}", "give more than 0, mm");
        return Compute(turn, radius, thickness);
    }

    protected abstract Parsed<BendAllowance> Compute(double turn, double radius, double thickness);

    /// <summary>Arc of the layer at share <paramref name="k"/> of the thickness, mm.</summary>
    protected static double ArcAt(double turn, double radius, double thickness, double k) => turn * (radius + k * thickness);
}
