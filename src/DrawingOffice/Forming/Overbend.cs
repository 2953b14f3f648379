using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Forming;

/// <summary>A figure with its bounds over the range of yield of the material.</summary>
public readonly record struct Spread(double Value, double Low, double High);

/// <summary>A bend wanted: inside radius mm, angle from flat in radians, both after release.</summary>
/// <param name="Length">Of the bend line, mm.</param>
public sealed record WantedBend(double Radius, double Angle, double Thickness, double Length);

/// <summary>The former radius and angle that leave a wanted bend behind.</summary>
/// <param name="Radius">Inside, on the tool, mm.</param>
/// <param name="Angle">From flat, on the tool, radians.</param>
/// <param name="Kept">Share of the curvature that stays.</param>
/// <param name="PlaneStrain">The bend is long enough to be held along its length.</param>
public sealed record Overbend(WantedBend Wanted, Spread Radius, Spread Angle, double Kept, bool PlaneStrain, ImmutableArray<Caution> Cautions)
{
    // Under this the sheet shears and thins at the bend, which the relation leaves out (common practice).
    const double SharpUnder = 2;

    /// <summary>More on the tool than wanted, radians.</summary>
    public double More => Angle.Value - Wanted.Angle;

    /// <summary>By <see cref="SpringBack"/> at the least, middle and highest yield. Refuses an angle outside 0 to 180°; cautions what would have to be bent past that.</summary>
    public static Parsed<Overbend> Of(WantedBend wanted, Material material)
    {
        var yield = YieldRange.Of(material);
        if (yield.Refusal is { } brittle) return brittle;
        if (!(wanted.Length > 0)) return Refusal.Of("bend length", $"{wanted.Length}", "give a length in mm, more than 0");
        if (!(wanted.Angle is > 0 and <= Math.PI)) return Refusal.Of("angle", $"{wanted.Angle * 180 / Math.PI:0.###}°", "give the bend from flat, over 0 to 180°");
        var modulus = SpringBack.Stiffness(material.E.Typical!.Value, material.Poisson, wanted.Length, wanted.Thickness);
        var (soft, middle, hard) = (At(yield.Value.Low), At(yield.Value.Middle), At(yield.Value.High));
        if ((soft.Refusal ?? middle.Refusal ?? hard.Refusal) is { } refusal) return refusal;
        var radius = new Spread(middle.Value, hard.Value, soft.Value);
        var angle = new Spread(Set(radius.Value), Set(radius.High), Set(radius.Low));
        return new Overbend(wanted, radius, angle, middle.Value / wanted.Radius, wanted.Length >= SpringBack.WideFrom * wanted.Thickness,
            [.. Doubts(wanted, material, angle)]);

        Parsed<double> At(double y) => SpringBack.FormerRadius(wanted.Radius, wanted.Thickness, y, modulus);
        double Set(double r) => SpringBack.SetAngle(wanted.Angle, r, wanted.Radius, wanted.Thickness);
    }

    /// <summary>What cannot be bent because at 180° the sheet lies flat on itself; null when it can.</summary>
    /// <param name="angle">To be set, from flat, radians.</param>
    /// <param name="most">What the hardest sheet of the grade asks, radians.</param>
    public static Caution? PastFlat(double angle, double most) => most <= Math.PI ? null : new(CautionKind.CannotBend,
        angle > Math.PI
            ? $"It would have to be bent to {angle * 180 / Math.PI:0.0}°, and at 180° the sheet lies flat on itself, so no tool does it in one bend: choose a smaller radius or a smaller angle, or curve it by hand a little at a time."
            : $"It must be bent to {angle * 180 / Math.PI:0.0}°, and a hard sheet of this grade past the 180° at which it lies flat on itself: try a strip first, and choose a smaller radius or a smaller angle if it opens too far.",
        [], angle, Math.PI);

    static IEnumerable<Caution> Doubts(WantedBend wanted, Material material, Spread angle)
    {
        if (YieldRange.Guess(material) is { } guess) yield return guess;
        if (wanted.Radius < SharpUnder * wanted.Thickness)
            yield return new(CautionKind.OutsideRange,
                $"A radius of {wanted.Radius:0.0#} mm on {wanted.Thickness:0.0#} mm sheet is sharp; the relation leaves out what happens under {SharpUnder:0} thicknesses. Take it as a first guess and bend a strip.",
                [], wanted.Radius, SharpUnder * wanted.Thickness);
        if (PastFlat(angle.Value, angle.High) is { } past) yield return past;
        if (angle.High - angle.Low > wanted.Angle / 10)
            yield return new(CautionKind.OutsideRange,
                "Sheets of this grade spring back so differently that only a trial bend of the sheet in hand will do.", [], angle.High - angle.Low, wanted.Angle / 10);
    }
}
