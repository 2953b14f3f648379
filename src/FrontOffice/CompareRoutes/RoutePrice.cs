using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Judging;
using WitnessMark.Stores.Orders;

namespace WitnessMark.FrontOffice.CompareRoutes;

/// <summary>Money and days of waiting of a route. A quote that holds takes the place of the price and the days that common practice gives to what is bought or sent out.</summary>
/// <param name="Money">Null when no template tells it, or it cannot be told in the shop's currency.</param>
sealed record RoutePrice(Estimate? Money, Estimate Wait, ImmutableArray<string> Lacking)
{
    public static RoutePrice Of(CompareRequest r, RouteJobs route)
    {
        var lacking = ImmutableArray.CreateBuilder<string>();
        var quote = Bought(route.Route) ? RouteQuote.Best(r, route.Route, lacking) : null;
        var leads = route.Jobs.SelectMany(j => j.Leads).Where(l => !l.Here).ToList();
        var replaced = quote is null ? [] : leads.Where(l => l.Price.Likely > 0).ToList();
        var costs = route.Jobs.Select(j => (j.Cost, Share: 1.0))
            .Concat(leads.Except(replaced).Select(l => (l.Price, 1.0)))
            .Concat(route.Hidden.Select(h => (h.Then.Cost, h.Found.Odds)));
        var sum = r.Table.Routes.ContainsKey(route.Route) ? Sum(r, costs, lacking) : null;
        var wait = leads.Where(l => quote?.Given.Quote.LeadDays is null || !replaced.Contains(l))
            .Aggregate(ThreePoint.Zero, (days, l) => days + Left(l, r.On));
        var source = route.Source(r);
        return quote is null
            ? new(sum is { } s ? RouteFigures.Told(s, source) : null, RouteFigures.Told(wait, source), lacking.ToImmutable())
            : new(sum is { } q ? RouteFigures.Told(q + Flat((double)quote.Price), $"quote of {quote.Given.Firm}, {source}") : null,
                RouteFigures.Told(wait + Flat(quote.Given.Quote.LeadDays ?? 0), quote.Given.Quote.LeadDays is null ? source : $"quote of {quote.Given.Firm}, {source}"), lacking.ToImmutable());
    }

    public static bool Bought(Route route) => route is Route.BuyNew or Route.BuySecondHand or Route.SendOut;

    static ThreePoint Flat(double x) => new(x, x, x);

    /// <summary>Days that are still to pass; what has been ordered has used some up.</summary>
    static ThreePoint Left(Lead lead, DateOnly on)
    {
        var gone = lead.Ordered is { } day ? Math.Max(0, on.DayNumber - day.DayNumber) : 0;
        return new(Math.Max(0, lead.Days.Low - gone), Math.Max(0, lead.Days.Likely - gone), Math.Max(0, lead.Days.High - gone));
    }

    static ThreePoint? Sum(CompareRequest r, IEnumerable<(Cost Cost, double Share)> costs, ImmutableArray<string>.Builder lacking)
    {
        var sum = ThreePoint.Zero;
        foreach (var (currency, money) in costs.GroupBy(c => c.Cost.Currency)
            .Select(g => (g.Key, g.Aggregate(ThreePoint.Zero, (s, c) => s + new ThreePoint((double)c.Cost.Low, (double)c.Cost.Likely, (double)c.Cost.High) * c.Share))))
        {
            if (money == ThreePoint.Zero) continue;
            // A thousand tells the rate to the hundred-thousandth, since sums of money are rounded to the hundredth.
            var rate = Exchange.To(r.Shop.Currency, new(1000, currency), r.On, r.Rates);
            if (!rate.Ok)
            {
                lacking.Add(string.Create(CultureInfo.InvariantCulture, $"a rate of {currency} to {r.Shop.Currency}: {money.Likely:0.00} {currency} cannot be told"));
                return null;
            }
            sum += money * ((double)rate.Value.Own.Amount / 1000);
        }
        return sum;
    }
}
