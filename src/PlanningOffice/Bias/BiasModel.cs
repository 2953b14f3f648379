using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.PlanningOffice;

/// <summary>A finished job: hours guessed (the mean of the PERT-beta) and taken, both above 0.</summary>
public sealed record FinishedJob(string Kind, string System, double Guessed, double Taken);

/// <summary>Taken over guessed: median with the ends of the middle 80 %, of jobs of one kind on one system, their own scatter left out. The interval takes the mixture over the scales as one normal of its mean and variance.</summary>
public sealed record BiasFactor(double Median, double Low, double High, double LogMean, double LogSd, double JobLogSd);

/// <summary>
/// log(taken / guessed) = mu + a[kind] + b[system] + e, all normal. Given the three scales the posterior is exact; the scales are
/// summed over a grid under half-normal priors. Not robust: one wild job moves the answer.
/// </summary>
public sealed class BiasModel
{
    /// <summary>Median factor and log sd before any job is finished (common practice, editable).</summary>
    public const double UsualFactor = 1.5, UsualLogSd = 0.4;

    static readonly double[] Taus = [0.03, 0.1, 0.2, 0.3, 0.45, 0.65, 0.9];
    static readonly double[] Sigmas = [0.1, 0.2, 0.3, 0.4, 0.5, 0.65, 0.85, 1.1, 1.5];

    readonly string[] _kinds;
    readonly string[] _systems;
    readonly List<(double Weight, double TauKind, double TauSystem, double Sigma, GaussianFit Fit)> _grid = [];

    public BiasModel(ImmutableArray<FinishedJob> jobs, double factor = UsualFactor, double logSd = UsualLogSd)
    {
        foreach (var j in jobs)
            foreach (var (field, hours) in new[] { ("guessed hours", j.Guessed), ("taken hours", j.Taken) })
                if (!(hours > 0 && hours < 1e5)) throw new RefusedException(Refusal.Of(field, $"{hours}", "give hours above 0, below 100000"));
        if (!(factor > 0.05 && factor < 20)) throw new RefusedException(Refusal.Of("factor", $"{factor}", "give a factor from 0.05 to 20"));
        if (!(logSd > 0.01 && logSd < 3)) throw new RefusedException(Refusal.Of("log sd", $"{logSd}", "give 0.01 to 3"));
        _kinds = [.. jobs.Select(j => j.Kind).Distinct().Order(StringComparer.Ordinal)];
        _systems = [.. jobs.Select(j => j.System).Distinct().Order(StringComparer.Ordinal)];
        var rows = jobs.Select(j => (Math.Log(j.Taken / j.Guessed) - Math.Log(factor), 1 + Array.IndexOf(_kinds, j.Kind), 1 + _kinds.Length + Array.IndexOf(_systems, j.System))).ToArray();
        var (centre, best) = (Math.Log(factor), double.NegativeInfinity);
        var logs = new List<double>();
        foreach (var (tk, i) in Taus.Select((t, i) => (t, i)))
            foreach (var (ts, k) in Taus.Select((t, k) => (t, k)))
                foreach (var (s, m) in Sigmas.Select((t, m) => (t, m)))
                {
                    var fit = GaussianFit.Of(rows, centre, logSd, tk, _kinds.Length, ts, _systems.Length, s);
                    var log = fit.LogEvidence - (tk * tk + ts * ts) / (2 * 0.4 * 0.4) - s * s / (2 * 0.6 * 0.6)
                        + Math.Log(Width(Taus, i) * Width(Taus, k) * Width(Sigmas, m));
                    best = Math.Max(best, log);
                    logs.Add(log);
                    _grid.Add((0, tk, ts, s, fit));
                }
        var sum = logs.Sum(l => Math.Exp(l - best));
        for (var g = 0; g < _grid.Count; g++) _grid[g] = _grid[g] with { Weight = Math.Exp(logs[g] - best) / sum };
    }

    /// <summary>A kind or system never seen is drawn from its prior.</summary>
    public BiasFactor Of(string kind, string system)
    {
        var (k, s) = (Array.IndexOf(_kinds, kind), Array.IndexOf(_systems, system));
        var (mean, square, job) = (0.0, 0.0, 0.0);
        foreach (var (w, tk, ts, sigma, fit) in _grid)
        {
            var (m, v) = fit.Sum(k < 0 ? null : 1 + k, s < 0 ? null : 1 + _kinds.Length + s);
            v += (k < 0 ? tk * tk : 0) + (s < 0 ? ts * ts : 0);
            mean += w * m;
            square += w * (v + m * m);
            job += w * sigma * sigma;
        }
        var sd = Math.Sqrt(Math.Max(0, square - mean * mean));
        var z = Normal.Quantile(0.9);
        return new(Math.Exp(mean), Math.Exp(mean - z * sd), Math.Exp(mean + z * sd), mean, sd, Math.Sqrt(job));
    }

    static double Width(double[] grid, int i) => (grid[Math.Min(i + 1, grid.Length - 1)] - grid[Math.Max(i - 1, 0)]) / 2;
}
