using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Templates;
using WitnessMark.Stores;
using WitnessMark.Stores.Judging;

namespace WitnessMark.FrontOffice.CompareRoutes;

/// <summary>The open jobs that a route would bring: those the plan would be given, were it decided.</summary>
/// <param name="Card">The kept job whose card makes the part; null on other routes or while there is none.</param>
/// <param name="Own">Some of them the person has kept, and maybe edited.</param>
sealed record RouteJobs(Route Route, ImmutableArray<Job> Jobs, Job? Card, bool Own)
{
    public static RouteJobs Of(CompareRequest r, Route route)
    {
        var part = r.Part with
        {
            Route = new(route, "compared", r.On),
            Condition = r.Grade is ConditionGrade.Missing ? "missing" : r.Part.Condition,
        };
        var card = route == Route.Remake ? r.Kept.FirstOrDefault(j => j.PartId == part.Id && j.Card is not null) : null;
        var kept = r.Kept.ToDictionary(j => j.Id);
        var proposed = JobTemplates.Propose(new(r.Vehicle, [], [part], card is null ? [] : [card], []), r.Table).Missing;
        ImmutableArray<Job> jobs = [.. proposed.Select(j => kept.GetValueOrDefault(j.Id, j)).Concat(card is null ? [] : [card])];
        return new(route, [.. jobs.Where(j => j.State != JobState.Done)], card, jobs.Any(j => kept.ContainsKey(j.Id) && j != card));
    }

    /// <summary>Hidden work not looked for yet, with the job that grows by it.</summary>
    public IEnumerable<(Discovery Found, Consequence Then, Job Grows)> Hidden =>
        from job in Jobs
        from found in job.MayFind
        where found.Found is null
        from then in found.Then
        select (found, then, Jobs.FirstOrDefault(j => j.Id == then.Job) ?? job);

    /// <summary>Where the figures come from.</summary>
    public string Source(CompareRequest r) => string.Join(", ", new[]
    {
        Card is null ? null : "own card",
        Own ? "own plan" : null,
        Jobs.Any(j => r.Bias(j) != 1) ? "corrected by pace" : null,
        r.Table.Routes.ContainsKey(Route) ? Rate.CommonPractice : null,
    }.OfType<string>());
}
