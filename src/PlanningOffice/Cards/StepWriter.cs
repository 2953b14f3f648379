using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice;

/// <summary>Writes numbered steps with their hours and cost by one shop's rates.</summary>
sealed class StepWriter(Shop shop)
{
    readonly ImmutableArray<Step>.Builder _steps = ImmutableArray.CreateBuilder<Step>();

    public ImmutableArray<Step> Steps => _steps.ToImmutable();

    /// <summary>A step done here: set up once, then so many times each rate.</summary>
    public void Own(string title, string tool, ImmutableArray<string> cautions, params ReadOnlySpan<(Rate Minutes, double Times)> work)
    {
        var minutes = shop.Rates.SetUp.Value;
        var sources = new List<string> { shop.Rates.SetUp.Source };
        foreach (var (rate, times) in work)
        {
            minutes += rate.Value * times;
            sources.Add(rate.Source);
        }
        var hours = minutes * (1.0 / 60);
        _steps.Add(new(_steps.Count + 1, title, tool, hours, Sources(sources), Consumables(hours), cautions, SentOut: null));
    }

    /// <summary>A step the shop cannot do: own time goes into asking, carrying and fetching, twice the setting-up of a step.</summary>
    public void Outside(OutsideWork work, string title, string why)
    {
        var price = shop.Prices.Outside[work];
        var hours = shop.Rates.SetUp.Value * (2.0 / 60);
        _steps.Add(new(_steps.Count + 1, title, $"send out: {work.ToString().ToLowerInvariant()}", hours,
            Sources([shop.Rates.SetUp.Source, price.EachOrder.Source]), Cost.Of(price.EachOrder.Value, shop.Currency), [],
            new(why, price.LeadDays.Value)));
    }

    static string Sources(IEnumerable<string> each) => string.Join(", ", each.Distinct().Order(StringComparer.Ordinal));

    Cost Consumables(ThreePoint hours)
    {
        var each = shop.Prices.ConsumablesPerHour.Value;
        return Cost.Of(new(each.Low * hours.Low, each.Likely * hours.Likely, each.High * hours.High), shop.Currency);
    }
}
