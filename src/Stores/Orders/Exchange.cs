using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Orders;

/// <summary>An amount told in another currency, with the rate that was used.</summary>
/// <param name="Own">Rounded to the hundredth, half to even.</param>
/// <param name="Rate">Null when both are the same currency.</param>
public sealed record Exchanged(Money Given, Money Own, RateOfExchange? Rate)
{
    public string Words => Rate is { } r
        ? $"{Given} = {Own} (1 {r.From} = {r.Rate:0.######} {r.To} on {r.On:yyyy-MM-dd}, {r.Source})"
        : $"{Own}";
}

/// <summary>Sums in the person's currency.</summary>
public static class Exchange
{
    /// <summary>
    /// Uses the latest rate of a day not after <paramref name="on"/>, either way round; of two of the same day the one that arrived last. A rate through a
    /// third currency is not guessed.
    /// </summary>
    /// <param name="rates">Those that stand, in the order they arrived.</param>
    public static Parsed<Exchanged> To(string currency, Money given, DateOnly on, IEnumerable<RateOfExchange> rates)
    {
        if (given.Currency == currency) return new Exchanged(given, given, null);
        var between = rates.Where(r => r.On <= on && (r.From, r.To) is var way && (way == (given.Currency, currency) || way == (currency, given.Currency)));
        if (between.OrderBy(r => r.On).LastOrDefault() is not { } rate)
            return Refusal.Of("rate of exchange", null, $"{given} cannot be told in {currency}: give the rate of {given.Currency} to {currency} of a day up to {on:yyyy-MM-dd}");
        var amount = rate.From == currency ? given.Amount / rate.Rate : given.Amount * rate.Rate;
        return new Exchanged(given, new(Math.Round(amount, 2), currency), rate);
    }

    /// <summary>Each amount told in one currency and their sum; refused as a whole when one has no rate.</summary>
    public static Parsed<Totalled> Sum(string currency, IEnumerable<Money> amounts, DateOnly on, IReadOnlyCollection<RateOfExchange> rates)
    {
        var told = amounts.GroupBy(a => a.Currency)
            .Select(g => To(currency, new(g.Sum(a => a.Amount), g.Key), on, rates)).ToList();
        return told.FirstOrDefault(t => !t.Ok).Refusal is { } lacking ? lacking
            : new Totalled(new(told.Sum(t => t.Value.Own.Amount), currency), [.. told.Select(t => t.Value)]);
    }
}

/// <param name="Parts">The sum of each currency, told in the person's.</param>
public sealed record Totalled(Money Sum, ImmutableArray<Exchanged> Parts)
{
    public string Words => Parts.Any(p => p.Rate is not null) ? $"{Sum}: {string.Join("; ", Parts.Select(p => p.Words))}" : $"{Sum}";
}
