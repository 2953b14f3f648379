using System.Collections.Immutable;
using WitnessMark.Stores;
using WitnessMark.Stores.Orders;

namespace WitnessMark.FrontOffice.CompareRoutes;

/// <summary>The quote that a route is reckoned with.</summary>
/// <param name="Price">For all the pieces that the part needs, in the shop's currency.</param>
sealed record RouteQuote(GivenQuote Given, decimal Price)
{
    /// <summary>The cheapest that holds; what is lacking is told: no quote, one that has run out, one for another number of pieces.</summary>
    public static RouteQuote? Best(CompareRequest r, Route route, ImmutableArray<string>.Builder lacking)
    {
        var ours = r.Quotes.Where(q => q.Quote.PartId == r.Part.Id && q.Quote.Route == route).ToList();
        var holding = ours.Where(q => q.Quote.Holds(r.On)).ToList();
        var told = holding.Select(q => (q, Own: Exchange.To(r.Shop.Currency, q.Quote.Price, r.On, r.Rates))).ToList();
        foreach (var (q, own) in told.Where(t => !t.Own.Ok)) lacking.Add($"a rate of {q.Quote.Price.Currency} to {r.Shop.Currency} for the quote of {q.Firm}");
        var best = told.Where(t => t.Own.Ok).Select(t => new RouteQuote(t.q, t.Own.Value.Own.Amount * r.Part.Quantity / t.q.Quote.Quantity)).MinBy(q => q.Price);
        if (best is null)
        {
            if (holding.Count == 0 && ours.MaxBy(q => q.Quote.ValidUntil) is { } old) lacking.Add($"a fresh quote: that of {old.Firm} held until {old.Quote.ValidUntil:yyyy-MM-dd}");
            else if (ours.Count == 0) lacking.Add($"a quote to {route.Words()}: price and days are of common practice");
            return null;
        }
        var quote = best.Given.Quote;
        if (quote.Quantity != r.Part.Quantity) lacking.Add($"a quote for {r.Part.Quantity}: that of {best.Given.Firm} is for {quote.Quantity} and was taken in proportion");
        if (quote.LeadDays is null) lacking.Add($"a date from {best.Given.Firm}: days are of common practice");
        return best;
    }
}
