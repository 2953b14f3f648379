using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice;

/// <summary>The steps that make a part, with what to buy.</summary>
/// <param name="Cautions">Those of the part itself; each step carries its own.</param>
public sealed record RouteCard(
    string Title, int Quantity, ImmutableArray<StockToBuy> Stock, ImmutableArray<Step> Steps, ImmutableArray<string> Cautions)
{
    /// <summary>Own hours: all steps low, all likely, all high together.</summary>
    public ThreePoint Hours => Steps.Aggregate(ThreePoint.Zero, (sum, s) => sum + s.Hours);

    /// <summary>Stock, consumables and work sent out.</summary>
    public Cost Cost => Stock.Select(s => s.Cost).Concat(Steps.Select(s => s.Cost)).Aggregate((a, b) => a + b);

    public IEnumerable<Step> SentOut => Steps.Where(s => s.SentOut is not null);
}

/// <param name="Words">What to ask for at the counter.</param>
/// <param name="Laying">How the pieces lie on the sheet; null for bar, or when no listed sheet is large enough.</param>
/// <param name="Kilograms">Bought, waste included.</param>
public sealed record StockToBuy(string Words, Laying? Laying, double Kilograms, Cost Cost, string PriceSource);

/// <summary>One step of the card.</summary>
/// <param name="Hours">Own hours; those of fetching and carrying only when it is sent out.</param>
/// <param name="HoursSource">Where the rates come from.</param>
/// <param name="SentOut">Why the shop cannot do it; null when it can.</param>
public sealed record Step(
    int Number, string Title, string Tool, ThreePoint Hours, string HoursSource, Cost Cost,
    ImmutableArray<string> Cautions, SentOut? SentOut);

/// <param name="LeadDays">Calendar days until it is back.</param>
public sealed record SentOut(string Why, ThreePoint LeadDays);
