using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.PlanningOffice;

/// <summary>
/// Taken over guessed, for jobs of one kind on one system: median with the ends of the middle 80 %, the scatter of single
/// jobs left out; the same by mean and standard deviation of its logarithm; and that scatter, root mean square.
/// </summary>
public sealed record BiasFactor(double Median, double Low, double High, double LogMean, double LogSd, double JobLogSd)
{
    /// <summary>"you take 2.1× (1.6–2.8) what you say at fitting up".</summary>
    public string Words(WorkKind kind) => FormattableString.Invariant($"you take {Median:0.0}× ({Low:0.0}–{High:0.0}) what you say at {kind.Words()}");
}

/// <summary>
/// What the person's guesses are worth, from finished jobs: ln(taken / guessed) = mu + a[kind] + b[system] + e, all normal.
/// Given the three scales the posterior is exact; the scales are summed over <see cref="Scales.Grid"/> under half-normal
/// priors, so the same jobs always give the same answer. Not robust: one wild job moves it.
/// </summary>
public sealed class BiasModel
{
    /// <summary>Median factor and log sd before any job is finished (common practice, editable).</summary>
    public const double UsualFactor = 1.5, UsualLogSd = 0.4;

    static readonly int Kinds = Enum.GetValues<WorkKind>().Length;

    readonly Guid?[] _systems;
    readonly double _centre;

    /// <param name="factor">Median factor expected of anybody, 0.05 to 20.</param>
    /// <param name="logSd">How far people differ in it, as a standard deviation of the logarithm, 0.01 to 3.</param>
    /// <exception cref="RefusedException">A job or the prior is out of range.</exception>
    public BiasModel(ImmutableArray<FinishedJob> jobs, double factor = UsualFactor, double logSd = UsualLogSd)
    {
        for (var i = 0; i < jobs.Length; i++)
            if (jobs[i].Wrong is { } wrong) throw new RefusedException(wrong.In($"finished job {i + 1}"));
        if (factor is not (>= 0.05 and <= 20)) throw new RefusedException(Refusal.Of("usual factor", $"{factor}", "give a factor from 0.05 to 20"));
        if (logSd is not (>= 0.01 and <= 3)) throw new RefusedException(Refusal.Of("spread of the usual factor", $"{logSd}", "give a standard deviation of the logarithm from 0.01 to 3"));
        Jobs = jobs.Length;
        _centre = Math.Log(factor);
        _systems = [.. jobs.Select(j => j.System).Distinct()];
        Points = Grid(Cells(jobs), logSd);
    }

    /// <summary>Finished jobs it was learnt from.</summary>
    public int Jobs { get; }

    /// <summary>Grid points that matter, with weights that sum to 1.</summary>
    internal (double Weight, Scales Scales, GaussianFit Fit)[] Points { get; }

    internal int Effects => 1 + Kinds + _systems.Length;

    internal double Centre => _centre;

    /// <summary>The median factor of a job, worked out once for each kind of work and system that is asked for.</summary>
    public Func<Job, double> Medians()
    {
        var known = new Dictionary<PaceGroup, double>();
        return job =>
        {
            var group = new PaceGroup(job.Kind, job.SystemId);
            if (!known.TryGetValue(group, out var median)) known[group] = median = Of(group.Kind, group.System).Median;
            return median;
        };
    }

    /// <summary>What all jobs of one kind on one system share. A system never seen is drawn from the prior of systems.</summary>
    public BiasFactor Of(WorkKind kind, Guid? system)
    {
        var shared = Mixture(kind, system, false);
        return new(
            Math.Exp(shared.Quantile(0.5)), Math.Exp(shared.Quantile(0.1)), Math.Exp(shared.Quantile(0.9)),
            shared.Mean, shared.Sd, JobSd);
    }

    /// <summary>Root mean square of a single job's own standard deviation of the logarithm.</summary>
    public double JobSd => Math.Sqrt(Points.Sum(p => p.Weight * p.Scales.Job * p.Scales.Job));

    /// <summary>ln(taken / guessed) of one job still to be done.</summary>
    public NormalMixture OneJob(WorkKind kind, Guid? system) => Mixture(kind, system, true);

    /// <summary>Draws of the factors of many groups together, for one worker.</summary>
    public BiasDraw Draws(ImmutableArray<PaceGroup> groups) => new(this, groups);

    internal static int Place(WorkKind kind) => 1 + (int)kind;

    /// <summary>0 for a system never seen.</summary>
    internal int Place(Guid? system) => Array.IndexOf(_systems, system) is >= 0 and var s ? 1 + Kinds + s : 0;

    NormalMixture Mixture(WorkKind kind, Guid? system, bool oneJob)
    {
        var (k, s) = (Place(kind), Place(system));
        return new([.. Points.Select(p =>
        {
            var (m, v) = p.Fit.Sum(k, s);
            if (s == 0) v += p.Scales.System * p.Scales.System;
            if (oneJob) v += p.Scales.Job * p.Scales.Job;
            return (p.Weight, _centre + m, Math.Sqrt(v));
        })]);
    }

    // Jobs of one kind and system say all they have to say by their number, mean and squares about it.
    Cell[] Cells(ImmutableArray<FinishedJob> jobs) =>
    [
        .. from j in jobs
           group j.LogRatio - _centre by (j.Kind, j.System) into g
           let mean = g.Average()
           select new Cell(g.Count(), mean, g.Sum(y => (y - mean) * (y - mean)), Place(g.Key.Kind), Place(g.Key.System)),
    ];

    (double, Scales, GaussianFit)[] Grid(Cell[] cells, double logSd)
    {
        var (seen, prior) = (new Seen[cells.Length], new double[Effects]);
        var logs = Scales.Grid.Select(scales => (Log: Fit(cells, scales, logSd, seen, prior, out var fit), scales, fit)).ToArray();
        var best = logs.Max(p => p.Log);
        // Points a million times less likely than all together change no figure that is shown.
        var sum = logs.Sum(p => Math.Exp(p.Log - best));
        var kept = logs.Where(p => Math.Exp(p.Log - best) > 1e-6 * sum).ToArray();
        sum = kept.Sum(p => Math.Exp(p.Log - best));
        return [.. kept.Select(p => (Math.Exp(p.Log - best) / sum, p.scales, p.fit))];
    }

    static double Fit(Cell[] cells, Scales scales, double logSd, Seen[] seen, double[] prior, out GaussianFit fit)
    {
        var (log, variance) = (Math.Log(scales.Prior), scales.Job * scales.Job);
        for (var i = 0; i < cells.Length; i++)
        {
            var c = cells[i];
            seen[i] = new(c.Mean, variance / c.Count, c.Kind, c.System);
            log -= (c.Count - 1) * Math.Log(scales.Job) + c.Squares / (2 * variance);
        }
        prior.AsSpan(1 + Kinds).Fill(scales.System * scales.System);
        prior.AsSpan(1, Kinds).Fill(scales.Kind * scales.Kind);
        prior[0] = logSd * logSd;
        fit = GaussianFit.Of(seen, prior);
        return log + fit.LogEvidence;
    }

    /// <param name="Squares">Sum of the squares about the mean.</param>
    readonly record struct Cell(int Count, double Mean, double Squares, int Kind, int System);
}
