namespace WitnessMark.DrawingOffice.Intent.Wear;

/// <summary>
/// Scaled complementary error function. Rational Chebyshev approximations of W. J. Cody, Mathematics of
/// Computation 23 (1969) 631-637; the coefficients are his, in Horner form. Relative error below 2e-15 for x ≥ 0.
/// No package served here has the scaled form, without which the likelihood of small wear underflows.
/// </summary>
public static class Erfcx
{
    static readonly double[] NearTop = [1.85777706184603153e-1, 3.16112374387056560, 1.13864154151050156e2, 3.77485237685302021e2, 3.20937758913846947e3];
    static readonly double[] NearBottom = [1, 2.36012909523441209e1, 2.44024637934444173e2, 1.28261652607737228e3, 2.84423683343917062e3];

    static readonly double[] MiddleTop =
    [
        2.15311535474403846e-8, 5.64188496988670089e-1, 8.88314979438837594, 6.61191906371416295e1, 2.98635138197400131e2,
        8.81952221241769090e2, 1.71204761263407058e3, 2.05107837782607147e3, 1.23033935479799725e3,
    ];

    static readonly double[] MiddleBottom =
    [
        1, 1.57449261107098347e1, 1.17693950891312499e2, 5.37181101862009858e2, 1.62138957456669019e3,
        3.29079923573345963e3, 4.36261909014324716e3, 3.43936767414372164e3, 1.23033935480374942e3,
    ];

    static readonly double[] FarTop =
        [1.63153871373020978e-2, 3.05326634961232344e-1, 3.60344899949804439e-1, 1.25781726111229246e-1, 1.60837851487422766e-2, 6.58749161529837803e-4];

    static readonly double[] FarBottom =
        [1, 2.56852019228982242, 1.87295284992346725, 5.27905102951428412e-1, 6.05183413124413191e-2, 2.33520497626869185e-3];

    static readonly double InverseRootPi = 1 / Math.Sqrt(Math.PI);

    /// <summary>exp(x²)·erfc(x). Any x; grows as 2·exp(x²) below zero and is +∞ below about −26.6.</summary>
    public static double Scaled(double x) => x switch
    {
        < 0 => 2 * Math.Exp(x * x) - Scaled(-x),
        <= 0.46875 => Math.Exp(x * x) * (1 - x * Ratio(NearTop, NearBottom, x * x)),
        <= 4 => Ratio(MiddleTop, MiddleBottom, x),
        _ => Far(x),
    };

    static double Far(double x)
    {
        var inverseSquare = 1 / (x * x);
        return (InverseRootPi - inverseSquare * Ratio(FarTop, FarBottom, inverseSquare)) / x;
    }

    static double Ratio(double[] top, double[] bottom, double x) => Horner(top, x) / Horner(bottom, x);

    static double Horner(double[] coefficients, double x)
    {
        var sum = 0.0;
        foreach (var c in coefficients) sum = sum * x + c;
        return sum;
    }
}
