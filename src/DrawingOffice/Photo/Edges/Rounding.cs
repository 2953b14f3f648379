using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Edges;

/// <summary>
/// Blur draws a round edge inward: of a disc or hole of radius r blurred by σ the half-light line lies at r − σ²/(2 r), to first order (the blurred
/// light obeys the heat equation, and its contours move by their curvature). This is what must be added to the radius.
/// </summary>
static class Rounding
{
    /// <summary>Of the addition; how well a fitted step knows its own blur (common practice).</summary>
    const double Share = 0.3;

    public static Uncertain Of(IReadOnlyList<EdgePoint> points, double radius)
    {
        var add = points.Sum(p => p.Blur * p.Blur) / points.Count / (2 * radius);
        return new(add, Share * add);
    }
}
