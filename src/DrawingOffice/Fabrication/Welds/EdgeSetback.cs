namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// From the line in which two faces meet as measured to where the flat of each ends, mm, positive inwards. The line lies on the surface the
/// points were taken on; the sheet's edge is cut square. Holds for bends up to 170° from flat.
/// </summary>
public static class EdgeSetback
{
    /// <summary>To the tangent line of a fold.</summary>
    /// <param name="bend">From flat, radians; positive hollow on the upper side.</param>
    public static double Folded(double bend, double insideRadius, double thickness, PointsOn on) =>
        (insideRadius + thickness * FromInside(bend, on)) * Half(bend);

    /// <summary>To the cut edge of a welded joint; the inner edges meet, half the root gap on each side.</summary>
    public static double EdgeToEdge(double bend, double thickness, double rootGap, PointsOn on) =>
        thickness * FromInside(bend, on) * Half(bend) + rootGap / 2;

    /// <summary>To the edge of the face that runs through to the outside of the corner.</summary>
    public static double LappedThrough(double bend, double thickness, PointsOn on) =>
        thickness * (FromInside(bend, on) - 1) * Half(bend);

    /// <summary>To the edge of the face that stops against the other's inside, whichever of its two edges meets it first.</summary>
    public static double LappedAgainst(double bend, double thickness, double rootGap, PointsOn on)
    {
        var setting = Math.PI - Math.Abs(bend);
        var fromOutside = thickness * Math.Max(1, 1 + Math.Cos(setting)) / Math.Sin(setting);
        return fromOutside + LappedThrough(bend, thickness, on) + rootGap;
    }

    static double Half(double bend) => Math.Tan(Math.Abs(bend) / 2);

    // How deep the measured surface lies from the hollow one, as a share of the thickness.
    static double FromInside(double bend, PointsOn on) => on switch
    {
        PointsOn.Middle => 0.5,
        PointsOn.Upper => bend > 0 ? 0 : 1,
        _ => bend > 0 ? 1 : 0,
    };
}
