using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Bias;

public sealed class HeldOutTests
{
    const int People = 40, Taught = 24, Asked = 8;

    [Fact]
    [Truth(Grade.Property, "40 seeded simulated people, 24 jobs taught and 8 held out each: partial pooling scores better than each kind by itself and than all kinds alike; 80 % ranges hold 80 % within three binomial errors and 2 % for the people's shared effects")]
    public void Partial_pooling_foretells_best()
    {
        var chance = new Chance(2024);
        var (partial, alone, alike, within) = (0.0, 0.0, 0.0, 0);
        var draws = new double[1000];
        for (var p = 0; p < People; p++)
        {
            var jobs = Person(chance);
            var (model, taught) = (new BiasModel(jobs[..Taught]), jobs[..Taught]);
            foreach (var job in jobs[Taught..])
            {
                var log = model.OneJob(job.Kind, job.System);
                if (log.Below(job.LogRatio) is >= 0.1 and <= 0.9) within++;
                for (var i = 0; i < draws.Length; i++) draws[i] = Math.Exp(log.Draw(chance));
                partial += Score.Crps(draws, job.Taken / job.Guessed);
                alike += Plain(taught, job);
                alone += Plain([.. taught.Where(j => j.Kind == job.Kind)], job);
            }
        }
        Assert.True(partial < alone, $"{partial} {alone}");
        Assert.True(partial < alike, $"{partial} {alike}");
        const int all = People * Asked;
        Assert.InRange(within / (double)all, 0.8 - 3 * Math.Sqrt(0.16 / all) - 0.02, 0.8 + 3 * Math.Sqrt(0.16 / all) + 0.02);
    }

    [Fact]
    [Truth(Grade.Property, "a person who takes twice his guess, give or take, is foretold better by his record than by his word; too short a record is not judged")]
    public void A_record_beats_the_word()
    {
        var chance = new Chance(3);
        ImmutableArray<FinishedJob> jobs = [.. Enumerable.Range(0, 40).Select(_ => new FinishedJob(WorkKind.Make, null, 4, 8 * Math.Exp(0.2 * chance.Normal())))];
        var held = HeldOut.Of(jobs, chance)!;
        Assert.Equal(8, held.Jobs);
        Assert.True(held.Crps < held.GuessMissed / 3);
        Assert.Null(HeldOut.Of(jobs[..9], chance));
    }

    // Scales near the middle of their priors; four kinds and three systems.
    static ImmutableArray<FinishedJob> Person(Chance chance)
    {
        var mu = Math.Log(1.5) + 0.4 * chance.Normal();
        var (kinds, systems) = (Enumerable.Range(0, 4).Select(_ => 0.3 * chance.Normal()).ToArray(), Enumerable.Range(0, 3).Select(_ => 0.2 * chance.Normal()).ToArray());
        return [.. Enumerable.Range(0, Taught + Asked).Select(_ =>
        {
            var (k, s, guess) = (chance.Below(4), chance.Below(3), chance.Uniform(1, 12));
            return new FinishedJob((WorkKind)k, new Guid(1 + s, 0, 0, new byte[8]), guess, guess * Math.Exp(mu + kinds[k] + systems[s] + 0.4 * chance.Normal()));
        })];
    }

    // The log-normal of the mean and spread of the jobs given, the spread of the mean counted; the common prior where there are fewer than three.
    static double Plain(ImmutableArray<FinishedJob> jobs, FinishedJob asked)
    {
        var ratio = asked.Taken / asked.Guessed;
        if (jobs.Length < 3) return ClosedForms.LogNormal(Math.Log(1.5), 0.7, ratio);
        var mean = jobs.Average(j => j.LogRatio);
        var variance = jobs.Sum(j => Math.Pow(j.LogRatio - mean, 2)) / (jobs.Length - 1);
        return ClosedForms.LogNormal(mean, Math.Sqrt(variance * (1 + 1.0 / jobs.Length)), ratio);
    }
}
