using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

/// <summary>
/// Places whose three coordinates are read as heights and that are said to lie on a feature: the adjustment must then be the
/// least-squares fit of that feature (as ISO 10360-6 means it), worked out here by other means.
/// </summary>
[Truth(Grade.SecondImplementation, "singular vectors (MathNet.Numerics 5.0.0) for line and plane, Gauss-Newton with differences and dense QR for circle and cylinder")]
public class FitTests
{
    static readonly Vec3 s_axis = new Vec3(0.3, -0.5, 0.8).Unit;

    static Vec3 Rough(Chance chance, double by = 0.02) => by * new Vec3(chance.Normal(), chance.Normal(), chance.Normal());

    /// <summary>Distance of the adjusted part's frame does not matter: sizes, sums of squares and directions against the set-ups are compared.</summary>
    static void SameDirection(Vec3 expected, SolidPlan plan, string id, double tolerance)
    {
        var d = plan.Of(id).Direction;
        Vec3 found = new(d.Dot(plan.Of("X").Direction), d.Dot(plan.Of("Y").Direction), d.Dot(plan.Of("Z").Direction));
        Assert.InRange(Math.Min((found - expected).Length, (found + expected).Length), 0, tolerance);
    }

    /// <summary>Sum of squared distances over σ².</summary>
    static void SameMisfit(double rms, int places, SolidPlan plan) => Assert.Equal(rms * rms * places / 1e-4, plan.WeightedSumOfSquares, 1e-5 * rms * rms * places / 1e-4);

    [Theory, InlineData(1UL), InlineData(2UL), InlineData(3UL)]
    public void A_plane_comes_out_as_by_singular_vectors(ulong seed)
    {
        var chance = new Chance(seed);
        var (e1, e2) = Fits.Across(s_axis);
        Vec3[] places = [.. Enumerable.Range(0, 12).Select(_ => new Vec3(20, 30, 40) + chance.Uniform(-40, 40) * e1 + chance.Uniform(-25, 25) * e2 + Rough(chance))];
        var plan = SolidAdjust.Solve(Fits.Sample(places, new SolidFeature("F", SolidKind.Plane)), searchMirrors: false);
        var fit = Fits.Plane(places);
        SameMisfit(fit.Rms, places.Length, plan);
        SameDirection(fit.Direction, plan, "F", 1e-7);
    }

    [Theory, InlineData(1UL), InlineData(2UL), InlineData(3UL)]
    public void A_line_comes_out_as_by_singular_vectors(ulong seed)
    {
        var chance = new Chance(seed);
        Vec3[] places = [.. Enumerable.Range(0, 9).Select(i => new Vec3(20, 30, 40) + 9.0 * i * s_axis + Rough(chance))];
        var plan = SolidAdjust.Solve(Fits.Sample(places, new SolidFeature("F", SolidKind.Edge)), searchMirrors: false);
        var fit = Fits.Line(places);
        SameMisfit(fit.Rms, places.Length, plan);
        SameDirection(fit.Direction, plan, "F", 1e-7);
    }

    [Theory, InlineData(1UL), InlineData(2UL), InlineData(3UL)]
    public void A_circle_in_space_comes_out_as_by_a_plain_search(ulong seed)
    {
        var chance = new Chance(seed);
        var ((e1, e2), centre) = (Fits.Across(s_axis), new Vec3(20, 30, 40));
        Vec3[] places = [.. Enumerable.Range(0, 10).Select(i => 0.5 * i is var t ? centre + 18 * (Math.Cos(t) * e1 + Math.Sin(t) * e2) + Rough(chance) : default)];
        var plan = SolidAdjust.Solve(Fits.Sample(places, new SolidFeature("F", SolidKind.Hole) { Sketch = centre + Rough(chance, 2), SketchSize = 33, SketchDirection = s_axis + Rough(chance, 0.1) }), searchMirrors: false);
        var fit = Fits.Circle(places, centre, s_axis, 18);
        Assert.Equal(2 * fit[5], plan.Of("F").Size!.Value.Value, 1e-6);
        SameDirection(Fits.Tilted(s_axis, fit[3], fit[4]), plan, "F", 1e-7);
    }

    [Theory, InlineData(1UL), InlineData(2UL), InlineData(3UL)]
    public void A_cylinder_comes_out_as_by_a_plain_search(ulong seed)
    {
        var chance = new Chance(seed);
        var ((e1, e2), through) = (Fits.Across(s_axis), new Vec3(20, 30, 40));
        Vec3[] places = [.. Enumerable.Range(0, 20).Select(i => 1.1 * i is var t ? through + 3.0 * (i % 7) * s_axis + 12 * (Math.Cos(t) * e1 + Math.Sin(t) * e2) + Rough(chance) : default)];
        var plan = SolidAdjust.Solve(Fits.Sample(places, new SolidFeature("F", SolidKind.Cylinder) { Sketch = through + Rough(chance, 2), SketchSize = 22, SketchDirection = s_axis + Rough(chance, 0.1) }), searchMirrors: false);
        var fit = Fits.Cylinder(places, through, s_axis, 12);
        Assert.Equal(2 * fit[4], plan.Of("F").Size!.Value.Value, 1e-6);
        SameDirection(Fits.Tilted(s_axis, fit[2], fit[3]), plan, "F", 1e-7);
    }
}
