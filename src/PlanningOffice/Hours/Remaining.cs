using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>Own hours a job in hand still takes: one chance in ten of less than P10, one in two of P50, nine in ten of P90.</summary>
public readonly record struct Remaining(double P10, double P50, double P90)
{
    /// <summary>
    /// From the guess, the person's own pace and what has been logged: the hours of the whole job, given that they are more than
    /// those logged. A job past its guess is thus never told to be nearly over; the longer it runs over, the more is still to come.
    /// </summary>
    /// <param name="guessed">Hours of the whole job, as guessed before it began; above 0.</param>
    /// <param name="logged">0 or more. Past the 98th hundredth of what was foretold, what is left grows in step with what is logged.</param>
    public static Remaining Of(double guessed, double logged, NormalMixture logRatio)
    {
        if (guessed is not (> 0 and < FinishedJob.MostHours)) throw new RefusedException(Refusal.Of("guessed hours", $"{guessed}", $"give hours above 0, below {FinishedJob.MostHours}"));
        if (logged is not (>= 0 and < FinishedJob.MostHours)) throw new RefusedException(Refusal.Of("hours logged", $"{logged}", $"give hours from 0, below {FinishedJob.MostHours}"));
        var passed = logged > 0 ? Math.Min(0.98, logRatio.Below(Math.Log(logged / guessed))) : 0;
        // Past the edge the share of the hours still to come is kept as it stood there.
        var scale = passed < 0.98 ? guessed : logged / Math.Exp(logRatio.Quantile(0.98));
        double Left(double p) => Math.Max(0, scale * Math.Exp(logRatio.Quantile(Math.Clamp(passed + (1 - passed) * p, 0.001, 0.999))) - logged);
        return new(Left(0.1), Left(0.5), Left(0.9));
    }
}
