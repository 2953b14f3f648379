using WitnessMark.PlanningOffice;
using WitnessMark.Stores.Judging;

namespace WitnessMark.FrontOffice.CompareRoutes;

/// <summary>
/// Own hours of a route: all low, all likely, all high together, so that the ends are wider apart than they will come. Hidden
/// work counts by its odds; the expected hours are exact for that, the ends only moved by it.
/// </summary>
static class RouteFigures
{
    /// <summary>Null when no template tells the route.</summary>
    public static Estimate? Hours(CompareRequest r, RouteJobs route)
    {
        if (!r.Table.Routes.ContainsKey(route.Route)) return null;
        var sure = route.Jobs.Aggregate(ThreePoint.Zero, (sum, j) => sum + j.Hours * r.Bias(j));
        var all = route.Hidden.Aggregate(sure, (sum, h) => sum + h.Then.Hours * (h.Found.Odds * r.Bias(h.Grows)));
        return Told(all, route.Source(r));
    }

    public static Estimate Told(ThreePoint t, string source) => new(t.Low, t.Likely, t.High, source);
}
