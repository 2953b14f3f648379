using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// A strip folded once on the person's own tool. All with their ±.
/// </summary>
/// <param name="Strip">Length before folding, mm.</param>
/// <param name="LegA">Outside leg after folding, mm (beyond 90°: to the outermost part of the bend).</param>
/// <param name="LegB">The other one.</param>
/// <param name="Angle">From flat, radians, positive.</param>
/// <param name="Radius">Inside radius, mm.</param>
/// <param name="Thickness">mm.</param>
public sealed record TestStrip(Uncertain Strip, Uncertain LegA, Uncertain LegB, Uncertain Angle, Uncertain Radius, Uncertain Thickness);

/// <summary>
/// Allowance from the person's own test bend: K from the strip, its ± by the law of propagation (JCGM 100, 5.1.2, readings uncorrelated).
/// The ± of an allowance is that of K alone: thickness, radius and angle of the part are taken as given.
/// </summary>
public sealed record TestBend : BendMethod
{
    TestBend(TestStrip strip, Uncertain k) => (Strip, K) = (strip, k);

    public TestStrip Strip { get; }

    /// <summary>Neutral-axis factor found.</summary>
    public Uncertain K { get; }

    public static Parsed<TestBend> From(TestStrip s)
    {
        foreach (var (name, u) in new[] { ("strip length", s.Strip), ("first leg", s.LegA), ("second leg", s.LegB), ("thickness", s.Thickness) })
            if (!(u.Value > 0) || !double.IsFinite(u.Value) || !(u.Std >= 0)) return Refusal.Of($"test bend, {name}", $"{u.Value} ± {u.Std}", "give a length in mm, more than 0");
        if (!(s.Radius.Value >= 0)) return Refusal.Of("test bend, radius", $"{s.Radius.Value}", "give 0 or more, mm");
        if (!(s.Angle.Value is > 0 and <= Math.PI)) return Refusal.Of("test bend, angle", $"{s.Angle.Value * 180 / Math.PI:0.###}°", "give the bend from flat, up to 180°");
        var k = Calibrate(s);
        if (!(k.Value is > 0 and <= 1))
            return Refusal.Of("test bend", $"K = {k.Value:0.###}", "these readings put the neutral layer outside the sheet; look again at the legs (outside), the strip and the radius");
        return new TestBend(s, k);
    }

    static Uncertain Calibrate(TestStrip s)
    {
        var (r, t, angle) = (s.Radius.Value, s.Thickness.Value, s.Angle.Value);
        var setback = Setback.Outside(angle, r, t);
        var allowance = s.Strip.Value - s.LegA.Value - s.LegB.Value + 2 * setback;
        var k = (allowance / angle - r) / t;
        // Partial derivatives of K by each reading; the setback grows as R + T, and below 90° with the angle.
        var factor = setback / (r + t);
        var byLength = 1 / (angle * t);
        var byRadius = (2 * factor / angle - 1) / t;
        var byThickness = (2 * factor / angle - k) / t;
        var half = Math.Cos(angle / 2);
        var setbackByAngle = angle <= Math.PI / 2 ? (r + t) / (2 * half * half) : 0;
        var byAngle = (2 * setbackByAngle - allowance / angle) / (angle * t);
        var variance = Square(byLength * s.Strip.Std) + Square(byLength * s.LegA.Std) + Square(byLength * s.LegB.Std)
            + Square(byRadius * s.Radius.Std) + Square(byThickness * s.Thickness.Std) + Square(byAngle * s.Angle.Std);
        return new(k, Math.Sqrt(variance));
    }

    static double Square(double x) => x * x;

    protected override Parsed<BendAllowance> Compute(double turn, double radius, double thickness)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        // K moves slowly with R/T; a quarter is where the DIN 6935 curve has moved by about the ± of a careful test bend (0.02 to 0.03).
        var (here, there) = (radius / thickness, Strip.Radius.Value / Strip.Thickness.Value);
        if (Math.Abs(here - there) > 0.25 * Math.Max(here, there))
            cautions.Add($"the test bend had R/T {there:0.00}, this bend has {here:0.00}; fold a strip for it too");
        if (Math.Abs(thickness - Strip.Thickness.Value) > 0.1 * Strip.Thickness.Value)
            cautions.Add($"the test strip was {Strip.Thickness.Value:0.00} mm thick, this sheet is {thickness:0.00} mm");
        if (K.Value is < 0.25 or > 0.5) cautions.Add($"the test bend gives K = {K.Value:0.00}, outside the usual 0.25 to 0.5; measure the strip again");
        return new BendAllowance(ArcAt(turn, radius, thickness, K.Value), turn * thickness * K.Std, K.Value,
            $"own test bend, K = {K.Value:0.000} ± {K.Expanded:0.000}", "same sheet, thickness, radius and tool as the strip", cautions.ToImmutable());
    }
}
