using WitnessMark.Maths.Statistics;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// Discoveries under one cause: a one-factor Gaussian copula. Each is so when √ρ·Z + √(1 − ρ)·ε stays below Φ⁻¹(odds), with
/// Z common to the cause. What has been found or ruled out tells about Z: its distribution given that is known on a grid, so
/// the others' odds follow exactly (midpoint rule over ±6 in steps of 1/40; worst error under 1e-6 for ρ up to 0.95).
/// </summary>
sealed class SharedCause
{
    const int Grid = 480;
    const double Reach = 6;

    /// <summary>So far out that the chance beyond is 0 in double precision.</summary>
    const double Never = 36;

    readonly double[] _weight = new double[Grid], _upTo = new double[Grid + 1];

    /// <param name="known">Odds, pull and finding of those looked at.</param>
    public SharedCause(IEnumerable<(double Odds, double Pull, bool Found)> known)
    {
        for (var i = 0; i < Grid; i++)
            _weight[i] = Math.Exp(-At(i) * At(i) / 2);
        foreach (var (odds, pull, found) in known)
        {
            var edge = Edge(odds);
            for (var i = 0; i < Grid; i++)
            {
                var so = Given(edge, pull, At(i));
                _weight[i] *= found ? so : 1 - so;
            }
        }
        var sum = _weight.Sum();
        for (var i = 0; i < Grid; i++)
        {
            // Findings that cannot be (odds of 0, yet found) tell nothing of the cause.
            _weight[i] = sum > 0 ? _weight[i] / sum : 1.0 / Grid;
            _upTo[i + 1] = _upTo[i] + _weight[i];
        }
    }

    /// <summary>Odds of one not looked at, given the findings.</summary>
    public double Odds(double odds, double pull)
    {
        var (sum, edge) = (0.0, Edge(odds));
        for (var i = 0; i < Grid; i++) sum += _weight[i] * Given(edge, pull, At(i));
        return sum;
    }

    /// <summary>Z from a uniform number.</summary>
    public double Draw(double u)
    {
        var found = Array.BinarySearch(_upTo, u);
        var i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, Grid - 1);
        var within = _weight[i] > 0 ? (u - _upTo[i]) / _weight[i] : 0.5;
        return At(i) + (within - 0.5) * (2 * Reach / Grid);
    }

    /// <summary>Chance that one is so when the cause stands at z.</summary>
    static double Given(double edge, double pull, double z) =>
        Normal.Below(Math.Clamp((edge - Math.Sqrt(pull) * z) / Math.Sqrt(1 - pull), -Never, Never));

    /// <summary>Φ⁻¹ of the odds; far out of reach when they are 0 or 1.</summary>
    public static double Edge(double odds) => odds <= 0 ? -Never : odds >= 1 ? Never : Normal.Quantile(odds);

    static double At(int i) => -Reach + (i + 0.5) * (2 * Reach / Grid);
}
