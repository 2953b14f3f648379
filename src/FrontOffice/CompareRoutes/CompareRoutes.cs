using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Templates;
using WitnessMark.Stores;
using WitnessMark.Stores.Judging;

namespace WitnessMark.FrontOffice.CompareRoutes;

/// <param name="Cautions">What can hurt someone on any of the routes, each once.</param>
public sealed record CompareResult(Guid Vehicle, Part Part, RouteComparison Comparison, ImmutableArray<string> Cautions)
{
    /// <summary>The person's decision, with the whole comparison as it stood.</summary>
    /// <exception cref="RefusedException">No reason is given.</exception>
    public (Part Part, RouteChosen Chosen) Choose(Route route, string reason, Guid id, DateTimeOffset at, string device)
    {
        var chosen = new RouteChosen(id, Vehicle, Part.Id, route, reason, Comparison.Words(), at, device);
        return chosen.Wrong() is { } wrong ? throw new RefusedException(wrong)
            : (Part with { Route = new(route, reason, Comparison.On) }, chosen);
    }
}

/// <summary>The six routes of one part side by side: hours, money, date, certainty, originality, and what is lacking.</summary>
public static class CompareRoutes
{
    /// <exception cref="RefusedException">The hours a week are impossible, or a figure leaves its range.</exception>
    public static CompareResult Run(CompareRequest request)
    {
        var routes = Enum.GetValues<Route>().Select(r => RouteJobs.Of(request, r)).ToList();
        var outlooks = routes.Select(r => Outlook(request, r)).ToList();
        var cautions = Cautions.For([.. PartHazards.Of(request.Part, request.System)])
            .Concat(routes.SelectMany(r => r.Jobs).SelectMany(j => Cautions.For([.. PartHazards.Of(j, request.Part, request.System)])))
            .Concat(routes.Select(r => r.Card?.Card).OfType<RouteCard>().SelectMany(c => c.Cautions.Concat(c.Steps.SelectMany(s => s.Cautions))));
        return new(request.Vehicle, request.Part,
            RouteComparison.Of(request.Part.Name, request.Shop.Currency, request.On, request.HoursAWeek, outlooks), [.. cautions.Distinct()]);
    }

    static RouteOutlook Outlook(CompareRequest request, RouteJobs jobs)
    {
        var price = RoutePrice.Of(request, jobs);
        return new(
            jobs.Route, RouteFigures.Hours(request, jobs), price.Money, price.Wait,
            RouteScores.Certainty(request, jobs), RouteScores.Originality(request, jobs.Route),
            [.. RouteLacks.Of(request, jobs), .. price.Lacking], RouteLacks.Bar(request, jobs.Route));
    }
}
