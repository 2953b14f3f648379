using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Trade;

namespace WitnessMark.Stores.Orders;

/// <summary>An amount in one currency.</summary>
/// <param name="Currency">ISO 4217 code.</param>
public readonly record struct Money(decimal Amount, string Currency)
{
    const decimal Largest = 1_000_000_000;

    public override string ToString() => $"{Amount:0.00} {Currency}";

    /// <param name="field">What the money is for.</param>
    public Refusal? Wrong(string field) =>
        Amount is < 0 or > Largest ? Refusal.Of(field, $"{Amount}", $"give an amount from 0 to {Largest}") : Currencies.Wrong($"currency of the {field}", Currency);
}

/// <summary>Money that left on a day.</summary>
public sealed record Payment(Money Amount, DateOnly On)
{
    public Refusal? Wrong(string field) => Amount.Wrong(field) ?? Rows.Dated($"day of the {field}", On);
}

/// <summary>One of <paramref name="From"/> bought so many of <paramref name="To"/> on a day.</summary>
/// <param name="Source">Where it was read: the bank's statement, a newspaper.</param>
public sealed record RateOfExchange(
    Guid Id, Guid VehicleId, string From, string To, decimal Rate, DateOnly On, string Source, DateTimeOffset At, string Device) : IFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Currencies.Wrong("currency from", From) ?? Currencies.Wrong("currency to", To)
        ?? (From == To ? Refusal.Of("rate of exchange", $"{From} to {To}", "name two currencies") : null)
        ?? (Rate is <= 0 or > 1_000_000 ? Refusal.Of("rate of exchange", $"{Rate}", "give a number above 0, at most a million") : null)
        ?? Rows.Dated("date of the rate", On) ?? Check.Named("source of the rate", Source);
}
