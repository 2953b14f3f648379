using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.PlanningOffice;

/// <summary>What there is to work with on one vehicle, besides the person's own time.</summary>
/// <param name="Id">The vehicle's.</param>
/// <param name="Bays">Places for a whole vehicle or a large piece, 0 to 20.</param>
/// <param name="Benches">Places for one job each, 0 to 20.</param>
public sealed record Means(Guid Id, int Bays, int Benches, Purse Purse)
{
    public static Means Usual(Guid vehicle) => new(vehicle, 1, 1, new("GBP", null, default, [], []));

    public Refusal? Wrong =>
        (Bays is >= 0 and <= 20 ? null : Refusal.Of("bays", $"{Bays}", "give a whole number from 0 to 20"))
        ?? (Benches is >= 0 and <= 20 ? null : Refusal.Of("benches", $"{Benches}", "give a whole number from 0 to 20"))
        ?? Purse.Wrong;
}

/// <summary>Money as it comes in: a job that cannot be paid waits.</summary>
/// <param name="Currency">Of all its amounts; ISO 4217 code.</param>
/// <param name="OnHand">What is there on a day; null: money holds nothing up, and the cash curve is only spending.</param>
/// <param name="EachMonth">What can be put in on the first of each month.</param>
/// <param name="Rates">For prices in other currencies.</param>
public sealed record Purse(string Currency, DatedMoney? OnHand, ThreePoint EachMonth, ImmutableArray<DatedMoney> Once, ImmutableArray<ExchangeRate> Rates)
{
    public Refusal? Wrong =>
        (Once.IsDefault || Rates.IsDefault ? Refusal.Of("purse", null, "sums and rates are lists; they may be empty") : null)
        ?? Currencies.Wrong("currency", Currency) ?? EachMonth.Wrong?.In("money each month")
        ?? (OnHand is { } now ? now.Wrong : null)
        ?? Once.Select(o => o.Wrong).FirstOrDefault(r => r is not null)
        ?? Rates.Select(r => Currencies.Wrong("currency of a rate", r.Currency)
            ?? (r.On == default ? Refusal.Of($"day of the rate of {r.Currency}", null, "a rate needs its day") : null) ?? (r.Worth is > 0 and < 1e9 ? null
            : Refusal.Of($"rate of {r.Currency}", $"{r.Worth}", $"give what one is worth in {Currency}, above 0"))).FirstOrDefault(r => r is not null);

    /// <summary>What one unit of a currency is worth in the purse's own; refused when no rate is given.</summary>
    public double Worth(string currency) =>
        currency == Currency ? 1
        : Rates.Where(r => r.Currency == currency).OrderByDescending(r => r.On).Select(r => (double?)r.Worth).FirstOrDefault()
          ?? throw new RefusedException(Refusal.Of("currency", currency, $"give its rate to {Currency} and the day of the rate"));
}

/// <param name="Amount">In the purse's currency; spent money is negative.</param>
public sealed record DatedMoney(DateOnly On, decimal Amount, string Words)
{
    internal Refusal? Wrong => On == default ? Refusal.Of($"day of the money \"{Words}\"", null, "money needs the day it is there") : null;
}

/// <param name="Worth">What one unit is worth in the purse's currency.</param>
/// <param name="On">The day of the rate.</param>
public sealed record ExchangeRate(string Currency, double Worth, DateOnly On);
