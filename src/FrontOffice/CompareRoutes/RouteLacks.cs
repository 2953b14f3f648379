using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Judging;

namespace WitnessMark.FrontOffice.CompareRoutes;

/// <summary>What stands in the way of a route, and what would make its figures better.</summary>
static class RouteLacks
{
    /// <summary>Why it cannot be done; null when it can.</summary>
    public static string? Bar(CompareRequest r, Route route) => (route, r.Grade) switch
    {
        (Route.Clean or Route.Refurbish or Route.SendOut, ConditionGrade.Missing) => "the part is not there",
        (Route.Clean or Route.Refurbish, ConditionGrade.Lost) => "what is left serves as a pattern only",
        _ => null,
    };

    public static IEnumerable<string> Of(CompareRequest r, RouteJobs jobs) => jobs.Route switch
    {
        Route.Clean => Graded(r),
        Route.Refurbish => Graded(r).Concat(r.Shop.Welders.IsEmpty ? ["a welder in the shop, should new metal have to be let in"] : []),
        Route.Remake => Made(r, jobs.Card).Concat(r.Samples.SelectMany(s => Sampled(r, s))),
        _ => [],
    };

    static IEnumerable<string> Graded(CompareRequest r) =>
        r.Grade is null ? ["its condition graded, with evidence: until then the repair is a guess"] : [];

    static IEnumerable<string> Made(CompareRequest r, Job? card)
    {
        if (card?.Card is { } route)
        {
            foreach (var step in route.SentOut) yield return $"tools for \"{step.Title}\": {step.SentOut!.Why.TrimEnd('.')}";
            yield break;
        }
        yield return "a drawing and a job card: hours, money and days are of common practice";
        if (r.Shop.Lathe is null) yield return "a lathe, should it be a turned part";
        if (r.Shop.Folder is null && r.Shop.Vice is null) yield return "a folder or a vice, should it be a folded part";
        if (r.Samples.IsEmpty) yield return "a sample to measure";
    }

    static IEnumerable<string> Sampled(CompareRequest r, SampleState s)
    {
        if (s.StillMissing > 0)
            yield return $"{s.StillMissing} {(s.StillMissing == 1 ? "reading" : "readings")} of \"{s.Sample.Title}\"{(s.Sample.Loan is { } loan ? Due(loan, r.On) : "")}";
    }

    static string Due(Loan loan, DateOnly on) =>
        loan.DaysLeft(on) < 0 ? $", which was due back to {loan.Lender} on {loan.Due:yyyy-MM-dd}" : $", which goes back to {loan.Lender} on {loan.Due:yyyy-MM-dd}";
}
