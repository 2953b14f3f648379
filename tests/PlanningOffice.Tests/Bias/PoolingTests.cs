using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Bias;

/// <summary>The Gaussian core and the sum over scales against what others published or another way of computing them.</summary>
public sealed class PoolingTests
{
    static readonly double[] Coached = [28, 8, -3, 7, -1, 1, 18, 12], Error = [15, 10, 16, 11, 9, 11, 10, 18];

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(25)]
    [Truth(Grade.Published, "Eight schools: D. B. Rubin (1981), Estimation in parallel randomized experiments; A. Gelman et al., Bayesian Data Analysis, 3rd ed., section 5.4-5.5, equations 5.17 and 5.20, marginal over mu")]
    public void Eight_schools_are_pooled_as_published(double tau)
    {
        // A prior of mu a thousand times wider than the data stands for the flat one: relative error about 1e-5.
        var fit = GaussianFit.Of([.. Coached.Select((y, j) => new Seen(y, Error[j] * Error[j], 1 + j, 0))], [1e8, .. Enumerable.Repeat(tau * tau, 8)]);
        var weights = Error.Select(s => 1 / (s * s + tau * tau)).ToArray();
        var (mu, variance) = (Coached.Zip(weights, (y, w) => w * y).Sum() / weights.Sum(), 1 / weights.Sum());
        for (var j = 0; j < 8; j++)
        {
            var (s2, t2) = (Error[j] * Error[j], tau * tau);
            var ofData = 1 / s2 / (1 / s2 + 1 / t2);
            var (mean, v) = fit.Sum(1 + j, 0);
            Assert.Equal(ofData * Coached[j] + (1 - ofData) * mu, mean, 1e-3);
            Assert.Equal(1 / (1 / s2 + 1 / t2) + (1 - ofData) * (1 - ofData) * variance, v, 1e-3);
        }
    }

    [Fact]
    [Truth(Grade.Published, "Gelman et al., Bayesian Data Analysis, 3rd ed., equation 5.21: marginal posterior density of tau, eight schools, ratios between values of tau")]
    public void Evidence_of_the_scale_is_as_published()
    {
        double Ours(double tau) => GaussianFit.Of([.. Coached.Select((y, j) => new Seen(y, Error[j] * Error[j], 1 + j, 0))], [1e8, .. Enumerable.Repeat(tau * tau, 8)]).LogEvidence;
        double Published(double tau)
        {
            var w = Error.Select(s => 1 / (s * s + tau * tau)).ToArray();
            var mu = Coached.Zip(w, (y, p) => p * y).Sum() / w.Sum();
            return -Math.Log(w.Sum()) / 2 + w.Select((p, j) => Math.Log(p) / 2 - p * (Coached[j] - mu) * (Coached[j] - mu) / 2).Sum();
        }
        foreach (var tau in new[] { 1.0, 3, 8, 20, 40 })
            Assert.Equal(Published(tau) - Published(5), Ours(tau) - Ours(5), 1e-4);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    [InlineData(30)]
    [Truth(Grade.SecondImplementation, "fine trapezoid integration over the three scales, jobs of one kind on one system taken as exchangeable normals, 120 points a scale")]
    public void The_grid_is_fine_enough(int jobs)
    {
        var system = new Guid(1, 0, 0, new byte[8]);
        double[] ratios = [2.0, 1.6, 2.9, 2.2, 1.4, 3.1];
        var finished = Enumerable.Range(0, jobs).Select(i => new FinishedJob(WorkKind.Make, system, 2, 2 * ratios[i % 6])).ToArray();
        var (mean, sd, job) = Reference([.. finished.Select(j => j.LogRatio)]);
        var model = new BiasModel([.. finished]);
        var factor = model.Of(WorkKind.Make, system);
        Assert.Equal(mean, factor.LogMean, 0.01);
        Assert.Equal(sd, factor.LogSd, 0.05 * sd);
        Assert.Equal(job, model.JobSd, 0.05 * job);
    }

    static (double Mean, double Sd, double Job) Reference(double[] y)
    {
        var (n, bar, centre) = (y.Length, y.Average(), Math.Log(BiasModel.UsualFactor));
        var squares = y.Sum(v => (v - bar) * (v - bar));
        var (total, first, second, job) = (0.0, 0.0, 0.0, 0.0);
        // All of one kind on one system: only the sum of the two scales' squares matters, so polar coordinates serve.
        for (var r = 0.5; r < 120; r++)
            for (var s = 0.5; s < 120; s++)
            {
                var (tau2, sigma) = (Math.Pow(r / 120 * 2, 2), s / 120 * 3);
                var prior = r * Math.Exp(-tau2 / (2 * 0.16)) * Math.Exp(-sigma * sigma / (2 * 0.36));
                var (v0, v1) = (0.16 + tau2, sigma * sigma / n);
                var weight = prior * Math.Exp(-(n - 1) * Math.Log(sigma) - squares / (2 * sigma * sigma) - (bar - centre) * (bar - centre) / (2 * (v0 + v1)))
                    / Math.Sqrt(v0 + v1);
                var (m, v) = (centre + (bar - centre) * v0 / (v0 + v1), v0 * v1 / (v0 + v1));
                total += weight;
                first += weight * m;
                second += weight * (v + m * m);
                job += weight * sigma * sigma;
            }
        return (first / total, Math.Sqrt(second / total - first / total * (first / total)), Math.Sqrt(job / total));
    }
}
