using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Forming;

/// <summary>
/// The person's own trial bend: bent on the tool to one angle, found at another after release. What it tells of the sheet in hand beats any
/// table. All radii inside, mm; angles from flat, radians.
/// </summary>
/// <param name="Yields">Y/E' of the sheet as it behaved; times thickness and radius it gives X.</param>
public sealed record TrialBend(double SetRadius, double SetAngle, double FoundAngle, double Thickness, double FoundRadius, double Yields)
{
    /// <summary>
    /// From the angles alone: the arc at mid-thickness keeps its length, so the radius found follows. Refuses a bend that closed up and one that opened
    /// further than the elastic-plastic relation can.
    /// </summary>
    public static Parsed<TrialBend> Of(double setRadius, double setAngle, double foundAngle, double thickness)
    {
        if (!(setRadius > 0)) return Refusal.Of("trial bend, radius", $"{setRadius:0.###} mm", "give the inside radius of the tool, more than 0");
        if (!(thickness > 0)) return Refusal.Of("trial bend, thickness", $"{thickness:0.###} mm", "give a thickness above 0");
        if (!(setAngle is > 0 and <= Math.PI)) return Refusal.Of("trial bend, angle set", Degrees(setAngle), "give the bend from flat, over 0 to 180°");
        if (!(foundAngle > 0 && foundAngle < setAngle)) return Refusal.Of("trial bend, angle found", Degrees(foundAngle), $"after release it is less than the {Degrees(setAngle)} set, and more than 0");
        var found = (setRadius + thickness / 2) * setAngle / foundAngle - thickness / 2;
        return new TrialBend(setRadius, setAngle, foundAngle, thickness, found, SpringBack.Measure(setRadius / found) * thickness / setRadius);
    }

    /// <summary>Radius to bend to so that a wanted one stays, by the sheet's own measure.</summary>
    public Parsed<double> FormerRadius(double finalRadius) => SpringBack.FormerRadius(finalRadius, Thickness, Yields, 1);

    /// <summary>The same sheet bent to another radius and angle; bounds are not known from one bend.</summary>
    public Parsed<(double Radius, double Angle)> For(double finalRadius, double finalAngle)
    {
        var radius = FormerRadius(finalRadius);
        return radius.Refusal is { } refusal ? refusal : (radius.Value, SpringBack.SetAngle(finalAngle, radius.Value, finalRadius, Thickness));
    }

    static string Degrees(double radians) => $"{radians * 180 / Math.PI:0.##}°";
}
