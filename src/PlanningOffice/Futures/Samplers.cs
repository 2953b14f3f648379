using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>Draws that <see cref="Chance"/> itself does not give.</summary>
public static class Samplers
{
    /// <summary>
    /// Gamma with scale 1. G. Marsaglia and W. W. Tsang, A simple method for generating gamma variables,
    /// ACM Trans. Math. Software 26 (2000) 363-372: exact by rejection, shape ≥ 1; a lower shape a is drawn as
    /// Γ(a + 1)·U^(1/a).
    /// </summary>
    /// <param name="shape">Positive.</param>
    public static double Gamma(this Chance chance, double shape)
    {
        if (shape < 1) return chance.Gamma(shape + 1) * Math.Pow(1 - chance.Uniform(), 1 / shape);
        var d = shape - 1.0 / 3;
        var c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var x = chance.Normal();
            var v = 1 + c * x;
            if (v <= 0) continue;
            v = v * v * v;
            // 1 − u lies in (0, 1], so its logarithm is finite.
            if (Math.Log(1 - chance.Uniform()) < 0.5 * x * x + d * (1 - v + Math.Log(v))) return d * v;
        }
    }

    /// <summary>Beta on [0, 1] as a ratio of gammas; both shapes positive.</summary>
    public static double Beta(this Chance chance, double alpha, double beta)
    {
        var a = chance.Gamma(alpha);
        return a / (a + chance.Gamma(beta));
    }
}
