namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>Smallest inside radius, mm, that a metal takes across the bend without cracking; thickness mm.</summary>
public static class MinimumRadius
{
    /// <summary>
    /// From the reduction of area in a tensile test, per cent, over 0 to 100: T·(50/r − 1), none above 50 %; above 20 % the neutral layer's
    /// shift is allowed for by T·(100 − r)²/(200 r − r²), which is the larger there, and the larger is returned.
    /// </summary>
    public static double FromReductionOfArea(double r, double thickness)
    {
        var plain = Math.Max(0, thickness * (50 / r - 1));
        return r <= 20 ? plain : Math.Max(plain, thickness * (100 - r) * (100 - r) / (200 * r - r * r));
    }

    /// <summary>
    /// From the elongation at break, per cent: the outer skin of a bend about mid-thickness is stretched by T/(2R + T). Elongation is averaged
    /// over a gauge length and is less than the metal bears at one place, so this lies well on the safe side.
    /// </summary>
    public static double FromElongation(double e, double thickness) => Math.Max(0, thickness / 2 * (100 / e - 1));
}
