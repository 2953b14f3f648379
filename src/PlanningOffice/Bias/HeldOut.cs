using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>How well the model, taught the earlier jobs, foretold the last fifth of them; hours.</summary>
/// <param name="Within80">Share that fell inside the middle 80 % foretold.</param>
/// <param name="Crps">Mean continuous ranked probability score: what the forecast missed by, its own width counted.</param>
/// <param name="GuessMissed">What the guesses, taken at their word, missed by.</param>
public sealed record HeldOut(int Jobs, double Within80, double Crps, double GuessMissed)
{
    public const int FewestJobs = 10;

    const int Draws = 1000;

    /// <summary>Null for fewer than <see cref="FewestJobs"/> jobs.</summary>
    /// <param name="inOrder">As they were finished.</param>
    public static HeldOut? Of(ImmutableArray<FinishedJob> inOrder, Chance chance)
    {
        if (inOrder.Length < FewestJobs) return null;
        var taught = inOrder.Length - inOrder.Length / 5;
        var model = new BiasModel(inOrder[..taught]);
        var later = inOrder[taught..];
        if (later.Select(j => j.Wrong).FirstOrDefault(r => r is not null) is { } wrong) throw new RefusedException(wrong);
        var (within, crps, missed) = (0.0, 0.0, 0.0);
        var draws = new double[Draws];
        foreach (var job in later)
        {
            var log = model.OneJob(job.Kind, job.System);
            if (log.Below(job.LogRatio) is >= 0.1 and <= 0.9) within++;
            for (var i = 0; i < Draws; i++) draws[i] = job.Guessed * Math.Exp(log.Draw(chance));
            crps += Score.Crps(draws, job.Taken);
            missed += Math.Abs(job.Guessed - job.Taken);
        }
        return new(later.Length, within / later.Length, crps / later.Length, missed / later.Length);
    }
}
