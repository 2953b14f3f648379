using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.PlanningOffice;

/// <summary>Hours and money still to come over all jobs not done.</summary>
/// <param name="Hours">Own hours.</param>
/// <param name="Money">One for each currency.</param>
/// <param name="Jobs">How many jobs were counted.</param>
public sealed record JobForecast(Spread Hours, ImmutableArray<MoneyForecast> Money, int Jobs, ImmutableArray<string> Cautions)
{
    public const int UsualFutures = 20_000;

    /// <summary>
    /// Coefficient of variation of the person's pace, common to all hours of one future (common practice, editable): who is
    /// slow at one job is slow at the next, and without it a long list would look far too certain.
    /// </summary>
    public const double UsualPace = 0.25;

    /// <summary>
    /// Plain Monte Carlo. Each step's hours and cost and each stock's cost is PERT-beta (<see cref="PertBeta"/>), independent
    /// of the others; hours are then multiplied by one lognormal pace of mean 1 for each future.
    /// </summary>
    /// <param name="futures">At least <see cref="Spread.FewestFutures"/>.</param>
    /// <param name="pace">0 to 2; 0 leaves the steps independent.</param>
    public static JobForecast Of(
        IEnumerable<Job> jobs, Chance chance, int futures = UsualFutures, double pace = UsualPace, CancellationToken cancel = default)
    {
        if (pace is not (>= 0 and <= 2)) throw new RefusedException(Refusal.Of("pace", $"{pace}", "give a coefficient of variation from 0 to 2"));
        var open = jobs.Where(j => j.State != JobState.Done).ToList();
        foreach (var job in open)
            if (job.Wrong is { } wrong) throw new RefusedException(new($"job \"{job.Title}\", {wrong.Sentence}"));
        var paces = pace > 0 ? new Lognormal(1, pace) : null;
        var hours = Draw(open.SelectMany(HoursOf), futures, paces, chance, cancel);
        var money = from cost in open.SelectMany(CostsOf)
                    group cost.Spread by cost.Currency into c
                    orderby c.Key
                    select new MoneyForecast(c.Key, Draw(c, futures, null, chance, cancel));
        return new(hours, [.. money], open.Count, Told(open));
    }

    /// <summary>Step by step where a card stands behind the job, for steps vary independently; the person's own guess otherwise.</summary>
    static IEnumerable<Duration> HoursOf(Job job) =>
        job.Card is { } card && card.Hours == job.Hours ? card.Steps.Select(s => s.Hours.Spread) : [job.Hours.Spread];

    static IEnumerable<Cost> CostsOf(Job job) =>
        (job.Card is { } card && card.Cost == job.Cost ? card.Steps.Select(s => s.Cost).Concat(card.Stock.Select(s => s.Cost)) : [job.Cost])
            .Concat(job.Leads.Select(l => l.Price));

    static Spread Draw(IEnumerable<Duration> parts, int futures, Duration? pace, Chance chance, CancellationToken cancel)
    {
        // A sure nothing draws nothing: most steps that cost no money.
        var drawn = parts.Where(p => p.Mean > 0).ToArray();
        var totals = new double[Math.Max(futures, 0)];
        for (var f = 0; f < totals.Length; f++)
        {
            if (f % 256 == 0) cancel.ThrowIfCancellationRequested();
            foreach (var p in drawn) totals[f] += p.Draw(chance);
            if (pace is not null) totals[f] *= pace.Draw(chance);
        }
        return Spread.Of(totals);
    }

    static ImmutableArray<string> Told(List<Job> open)
    {
        var outside = open.Sum(j => j.Leads.Count(l => l.Side == LeadSide.Behind && !l.Here));
        return
        [
            "Counts the jobs on the list only: what nobody has written down yet is not in it.",
            .. outside > 0 ? [$"Waiting for {outside} sent-out or curing steps is not in the hours."] : Array.Empty<string>(),
        ];
    }
}

public sealed record MoneyForecast(string Currency, Spread Amount);
