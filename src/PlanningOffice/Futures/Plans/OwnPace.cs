using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>How far the person's guesses are out, to be drawn anew for each future.</summary>
public interface IOwnPace
{
    /// <summary>
    /// Made ready for one worker: what is given back fills, for each group of jobs, the natural logarithm of the factor that all
    /// their hours share in one future, returns the standard deviation of a single job's own logarithm in that future, 0 to 3,
    /// and allocates nothing.
    /// </summary>
    Func<Chance, double> Into(ImmutableArray<PaceGroup> groups, double[] logs);

    /// <summary>The same standard deviation over all futures, root mean square; independent between jobs.</summary>
    double JobSd { get; }

    /// <summary>What the reader must know of it; empty when nothing.</summary>
    string Caution { get; }
}

/// <summary>Jobs of one kind on one system.</summary>
public readonly record struct PaceGroup(WorkKind Kind, Guid? System);

/// <summary>One lognormal factor of mean 1 for all jobs.</summary>
/// <param name="Variation">Coefficient of variation, 0 to 2.</param>
public sealed record SharedPace(double Variation, double JobSd) : IOwnPace
{
    public string Caution => "";

    public Func<Chance, double> Into(ImmutableArray<PaceGroup> groups, double[] logs)
    {
        if (Variation is not (>= 0 and <= 2)) throw new RefusedException(Refusal.Of("pace", $"{Variation}", "give a coefficient of variation from 0 to 2"));
        var s2 = Math.Log(1 + Variation * Variation);
        return chance =>
        {
            Array.Fill(logs, Math.Sqrt(s2) * chance.Normal() - s2 / 2);
            return JobSd;
        };
    }
}

/// <summary>
/// The pace learnt from finished jobs. Each future has its own scales, and factors of all kinds and systems drawn together from
/// what is known of them: what is uncertain of the person is common to his jobs, what is uncertain of one kind is that kind's.
/// </summary>
public sealed record LearntPace(BiasModel Model) : IOwnPace
{
    /// <summary>Before any job is finished: common practice.</summary>
    public static LearntPace Prior { get; } = new(new BiasModel([]));

    public double JobSd => Model.JobSd;

    public string Caution => Model.Jobs > 0 ? "" : $"Your own pace is not known yet: jobs are taken to need {BiasModel.UsualFactor:0.0} times the guess, widely spread (common practice), until hours are logged.";

    public Func<Chance, double> Into(ImmutableArray<PaceGroup> groups, double[] logs)
    {
        var draws = Model.Draws(groups);
        return chance => draws.Into(chance, logs);
    }
}
