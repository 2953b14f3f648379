namespace WitnessMark.DrawingOffice.Photo.Edges;

/// <summary>The normal distribution for edges, quick: a picture asks it a million times.</summary>
static class Bell
{
    /// <summary>P(Z ≤ z); absolute error below 1e-7 (Abramowitz and Stegun 7.1.26 states 1.5e-7 for erf).</summary>
    public static double Below(double z)
    {
        var x = Math.Abs(z) * 0.7071067811865476;
        var t = 1 / (1 + 0.3275911 * x);
        var tail = 0.5 * t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) * Math.Exp(-x * x);
        return z < 0 ? tail : 1 - tail;
    }

    public static double Density(double z) => 0.3989422804014327 * Math.Exp(-0.5 * z * z);
}
