using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>How far the person's guesses are out, to be drawn anew for each future.</summary>
public interface IOwnPace
{
    /// <summary>
    /// Made ready for one worker: what is given back fills, for each group of jobs, the natural logarithm of the factor that all
    /// their hours share in one future, and allocates nothing.
    /// </summary>
    Action<Chance> Into(ImmutableArray<PaceGroup> groups, double[] logs);

    /// <summary>Standard deviation of a single job's own logarithm of the factor, 0 to 3; independent between jobs.</summary>
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

    public Action<Chance> Into(ImmutableArray<PaceGroup> groups, double[] logs)
    {
        if (Variation is not (>= 0 and <= 2)) throw new RefusedException(Refusal.Of("pace", $"{Variation}", "give a coefficient of variation from 0 to 2"));
        var s2 = Math.Log(1 + Variation * Variation);
        return chance => Array.Fill(logs, Math.Sqrt(s2) * chance.Normal() - s2 / 2);
    }
}

/// <summary>
/// The pace learnt from finished jobs, whose kind and system are named as <see cref="Named"/> says. The factors of one future
/// move together, each within its own uncertainty: what is not known of the person is taken to be common to all his work, which
/// errs towards a wide forecast.
/// </summary>
/// <param name="Jobs">Finished jobs it was learnt from.</param>
public sealed record LearntPace(BiasModel Model, int Jobs) : IOwnPace
{
    /// <summary>Before any job is finished: common practice.</summary>
    public static LearntPace Prior { get; } = new(new([]), 0);

    public double JobSd => Model.Of("", "").JobLogSd;

    public string Caution => Jobs > 0 ? "" : $"Your own pace is not known yet: jobs are taken to need {BiasModel.UsualFactor:0.0} times the guess, widely spread (common practice), until hours are logged.";

    public static (string Kind, string System) Named(PaceGroup group) => ($"{group.Kind}", $"{group.System}");

    public Action<Chance> Into(ImmutableArray<PaceGroup> groups, double[] logs)
    {
        var factors = groups.Select(Named).Select(n => Model.Of(n.Kind, n.System)).ToArray();
        return chance =>
        {
            var z = chance.Normal();
            for (var g = 0; g < factors.Length; g++) logs[g] = factors[g].LogMean + factors[g].LogSd * z;
        };
    }
}
