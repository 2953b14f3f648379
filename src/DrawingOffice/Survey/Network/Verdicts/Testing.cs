using WitnessMark.DrawingOffice.Survey.Network.Wear;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>What the adjustment says of each equation, and how strict the test must be for the survey as a whole.</summary>
/// <remarks>
/// Baarda 1968: w = v / (σ √r). The critical value keeps the chance of accusing any reading of a clean survey at 5 in 100.
/// Two bounds on the largest of the w hold and the lower one is taken: Šidák's for the number of readings tested, and √χ² at
/// the survey's redundancy, since all w are projections of one residual vector of that many dimensions. The second rules small
/// surveys: with redundancy 1 every w is the same number and 1.96 is right, however many readings there are.
/// </remarks>
sealed class Testing
{
    /// <summary>Chance of any false accusation in a clean survey.</summary>
    public const double FalseAlarm = 0.05;

    /// <summary>Chance of finding an error of the stated smallest detectable size.</summary>
    public const double Power = 0.8;

    /// <summary>Cause: a redundancy number is 1 − leverage, and the leverage carries rounding of about 1e-8 from the widest weights.</summary>
    const double Unchecked = 1e-6;

    /// <summary>Cause: a reading checked to less than a thousandth would be wrong by a hundred of its ± before it showed; it cannot be accused for want of evidence.</summary>
    const double TooWeak = 1e-3;

    readonly Adjustment _solver;
    readonly Fit _fit;
    readonly Tails _tails;

    Testing(Adjustment solver, Fit fit, double[] residual, double[] redundancy, double critical, Tails tails) =>
        (_solver, _fit, Residual, Redundancy, Critical, _tails) = (solver, fit, residual, redundancy, critical, tails);

    /// <summary>Computed − observed, by row.</summary>
    public double[] Residual { get; }

    /// <summary>
    /// Redundancy number by row; 1 for a row that is left out. Of a row that wear bounds from one side only the share that it now acts
    /// as a plain reading: on the worn side it checks nothing.
    /// </summary>
    public double[] Redundancy { get; }

    public double Critical { get; }

    /// <summary>Standard normal deviate whose square is the non-centrality at which the stated power is reached.</summary>
    public double Detectable => Critical + Normal.Quantile(Power);

    public static Testing Of(Adjustment solver, Fit fit)
    {
        solver.Load(fit);
        var residual = new double[fit.Weights.Length];
        var redundancy = new double[fit.Weights.Length];
        solver.Evaluate(fit.X, residual);
        var tested = 0;
        var worn = new List<int>();
        for (var r = 0; r < residual.Length; r++)
        {
            redundancy[r] = 1;
            if (fit.Weights[r] == 0) continue;
            var leverage = fit.Weights[r] * solver.VarianceOfRow(fit, r);
            redundancy[r] = Math.Clamp(1 - leverage, 0, 1);
            if (solver.WearOf(r).IsOneSided)
            {
                redundancy[r] *= OneSided.Share(solver, fit, r);
                worn.Add(r);
            }
            if (redundancy[r] > TooWeak && solver.IsTestable(r)) tested++;
        }
        return new Testing(solver, fit, residual, redundancy, worn.Count > 0 ? OfMany(tested) : CriticalValue(tested, fit.Redundancy), Tails.Of(solver, fit, [.. worn]));
    }

    public bool IsChecked(int row) => Redundancy[row] > Unchecked;

    /// <summary>Checked well enough to be accused.</summary>
    public bool CanBeAccused(int row) => Redundancy[row] > TooWeak;

    /// <summary>How far a row acts as a plain reading: 1, less for one that wear bounds from one side.</summary>
    public double Share(int row) => OneSided.Share(_solver, _fit, row);

    /// <summary>Computed − observed of a worn row as all others foretell it; null for other rows, and where they do not.</summary>
    public double? Foretold(int row) => _tails.Others(row)?.Foretold;

    /// <summary>
    /// Normalised residual; null where nothing checks the row. Of a worn row what is foretold against what was read, as if
    /// nothing had worn: 0 on the worn side, so that it is accused only where no wear can explain it.
    /// </summary>
    public double? Normalised(int row, double sigma)
    {
        if (_tails.Others(row) is { } others)
            return others.Foretold is { } foretold ? _solver.Against(row, foretold) / Math.Sqrt(sigma * sigma + others.Variance) : null;
        if (!IsChecked(row)) return null;
        return _tails.Of(row) is var tail && tail == 0 ? Residual[row] / (sigma * Math.Sqrt(Redundancy[row])) : Residual[row] / Math.Sqrt(sigma * sigma * Redundancy[row] + tail);
    }

    /// <summary>Šidák's bound alone: beside worn rows a whole number of surplus readings bounds nothing.</summary>
    static double OfMany(int tested) => tested < 1 ? double.PositiveInfinity : Normal.OutsideQuantile(-double.ExpM1(double.LogP1(-FalseAlarm) / tested));

    /// <summary>The value that the largest |w| of a clean survey passes in 5 of 100 surveys at most.</summary>
    public static double CriticalValue(int tested, int redundancy)
    {
        if (tested < 1 || redundancy < 1) return double.PositiveInfinity;
        var sidak = OfMany(tested);
        return Math.Min(sidak, Math.Sqrt(ChiSquare.Quantile(1 - FalseAlarm, redundancy)));
    }
}
