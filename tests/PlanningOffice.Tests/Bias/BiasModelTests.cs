using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Bias;

public sealed class BiasModelTests
{
    static readonly Guid Brakes = new(1, 0, 0, [1, 2, 3, 4, 5, 6, 7, 8]), Body = new(2, 0, 0, [1, 2, 3, 4, 5, 6, 7, 8]);

    static BiasModel Mixed() => new([
        .. from i in Enumerable.Range(0, 12) select new FinishedJob(WorkKind.FitUp, i % 2 == 0 ? Brakes : Body, 3, 6 + i % 3),
        .. from i in Enumerable.Range(0, 8) select new FinishedJob(WorkKind.Strip, Brakes, 2, 1.8 + 0.2 * i)]);

    [Fact]
    [Truth(Grade.Property, "many jobs that all took twice their guess give a factor near 2; none give the prior")]
    public void Many_jobs_outweigh_the_prior()
    {
        var model = new BiasModel([.. Enumerable.Repeat(new FinishedJob(WorkKind.FitUp, Brakes, 3, 6), 40)]);
        Assert.InRange(model.Of(WorkKind.FitUp, Brakes).Median, 1.95, 2.02);
        Assert.Equal(1.5, new BiasModel([]).Of(WorkKind.FitUp, null).Median, 6);
    }

    [Fact]
    [Truth(Grade.Property, "a kind and a system seen are known better than those not seen, and an unseen one leans towards what is known of the person")]
    public void What_was_seen_is_known_better()
    {
        var model = Mixed();
        Assert.True(model.Of(WorkKind.FitUp, Brakes).LogSd < model.Of(WorkKind.Weld, Brakes).LogSd);
        Assert.True(model.Of(WorkKind.Weld, Brakes).LogSd < model.Of(WorkKind.Weld, Guid.NewGuid()).LogSd);
        Assert.True(model.Of(WorkKind.Weld, null).LogSd < new BiasModel([]).Of(WorkKind.Weld, null).LogSd);
        Assert.InRange(model.Of(WorkKind.Weld, null).Median, 1.2, 2.3);
    }

    [Fact]
    [Truth(Grade.Property, "joint draws have the mixture's mean, spread and quantiles for each group; five standard errors of 40,000 draws")]
    public void Draws_follow_the_mixture()
    {
        var model = Mixed();
        ImmutableArray<PaceGroup> groups = [new(WorkKind.FitUp, Brakes), new(WorkKind.Strip, Body), new(WorkKind.Weld, Guid.NewGuid()), new(WorkKind.FitUp, null)];
        var (draws, chance, logs, n) = (model.Draws(groups), new Chance(11), new double[4], 40_000);
        var (all, job) = (groups.Select(_ => new double[n]).ToArray(), 0.0);
        for (var f = 0; f < n; f++)
        {
            var sd = draws.Into(chance, logs);
            job += sd * sd;
            for (var g = 0; g < 4; g++) all[g][f] = logs[g];
        }
        Assert.Equal(model.JobSd, Math.Sqrt(job / n), 0.02 * model.JobSd);
        for (var g = 0; g < 4; g++)
        {
            var factor = model.Of(groups[g].Kind, groups[g].System);
            Assert.Equal(factor.LogMean, all[g].Average(), 5 * factor.LogSd / Math.Sqrt(n));
            Assert.Equal(0.1, all[g].Count(x => x < Math.Log(factor.Low)) / (double)n, 5 * 0.3 / Math.Sqrt(n));
            Assert.Equal(0.9, all[g].Count(x => x < Math.Log(factor.High)) / (double)n, 5 * 0.3 / Math.Sqrt(n));
        }
        Assert.True(Correlation(all[0], all[3]) > Correlation(all[0], all[2]));
    }

    [Fact]
    [Truth(Grade.Property, "bytes allocated by this thread while drawing")]
    public void Drawing_allocates_nothing()
    {
        var (draws, chance, logs) = (Mixed().Draws([new(WorkKind.FitUp, Brakes), new(WorkKind.Weld, null)]), new Chance(1), new double[2]);
        draws.Into(chance, logs);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var f = 0; f < 1000; f++) draws.Into(chance, logs);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Theory]
    [InlineData(0, 1, "guessed hours")]
    [InlineData(1, -2, "taken hours")]
    [InlineData(1, double.NaN, "taken hours")]
    [InlineData(double.PositiveInfinity, 1, "guessed hours")]
    [Truth(Grade.Property, "hours of a finished job are above 0 and finite; the sentence names the job and the field")]
    public void Impossible_hours_are_refused(double guessed, double taken, string field)
    {
        var said = Assert.Throws<RefusedException>(() => new BiasModel([new(WorkKind.FitUp, Brakes, 2, 3), new(WorkKind.FitUp, Brakes, guessed, taken)])).Message;
        Assert.StartsWith($"finished job 2, {field}", said);
    }

    [Fact]
    [Truth(Grade.Property, "an empty id and a kind not listed are refused")]
    public void Nameless_jobs_are_refused()
    {
        Assert.Contains("system", new FinishedJob(WorkKind.FitUp, Guid.Empty, 1, 1).Wrong!.Sentence);
        Assert.Contains("kind of work", new FinishedJob((WorkKind)99, null, 1, 1).Wrong!.Sentence);
    }

    static double Correlation(double[] x, double[] y)
    {
        var (mx, my) = (x.Average(), y.Average());
        var xy = x.Zip(y, (a, b) => (a - mx) * (b - my)).Sum();
        return xy / Math.Sqrt(x.Sum(a => (a - mx) * (a - mx)) * y.Sum(b => (b - my) * (b - my)));
    }
}
