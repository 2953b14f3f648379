using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.PlanningOffice.Frame;

namespace WitnessMark.Web.Client.PlanningOffice.Given;

/// <summary>The means while they are edited: everything as typed.</summary>
public sealed class MeansDraft(Means means)
{
    readonly Purse _purse = means.Purse;

    public string Bays { get; set; } = $"{means.Bays}";

    public string Benches { get; set; } = $"{means.Benches}";

    public string Currency { get; set; } = means.Purse.Currency;

    /// <summary>Nothing written in the amount: money holds nothing up.</summary>
    public SumDraft OnHand { get; } = means.Purse.OnHand is { } now ? new(now) : new();

    public TypedThree EachMonth { get; } = new(means.Purse.EachMonth);

    public List<SumDraft> Once { get; } = [.. means.Purse.Once.Select(o => new SumDraft(o))];

    public List<RateDraft> Rates { get; } = [.. means.Purse.Rates.Select(r => new RateDraft(r))];

    /// <exception cref="RefusedException">A field cannot be read, or the means cannot be so.</exception>
    public Means Read()
    {
        var read = means with
        {
            Bays = Typed.Whole("bays", Bays),
            Benches = Typed.Whole("benches", Benches),
            Purse = _purse with
            {
                Currency = Currency.Trim(),
                OnHand = OnHand.Amount.Trim().Length == 0 ? null : OnHand.Read("money on hand"),
                EachMonth = EachMonth.Read("money each month"),
                Once = [.. Once.Select(o => o.Read("sum"))],
                Rates = [.. Rates.Select(r => r.Read())],
            },
        };
        return read.Wrong is { } wrong ? throw new RefusedException(wrong) : read;
    }
}

/// <summary>Money on a day, as typed.</summary>
public sealed class SumDraft
{
    public SumDraft() { }

    public SumDraft(DatedMoney from) => (On, Amount, Words) = (Told.FieldDay(from.On), Told.Number((double)from.Amount), from.Words);

    public string On { get; set; } = "";

    public string Amount { get; set; } = "";

    public string Words { get; set; } = "";

    public DatedMoney Read(string what) => new(Typed.Day($"day of the {what} \"{Words}\"", On) ?? default, Typed.Money($"{what} \"{Words}\"", Amount), Words.Trim());
}

/// <summary>A rate of another currency, as typed.</summary>
public sealed class RateDraft
{
    public RateDraft() { }

    public RateDraft(ExchangeRate from) => (Currency, Worth, On) = (from.Currency, Told.Number(from.Worth), Told.FieldDay(from.On));

    public string Currency { get; set; } = "";

    public string Worth { get; set; } = "";

    public string On { get; set; } = "";

    public ExchangeRate Read() => new(Currency.Trim(), Typed.Number($"rate of {Currency}", Worth),
        Typed.Day($"day of the rate of {Currency}", On) ?? throw new RefusedException(Refusal.Of($"day of the rate of {Currency}", null, "a rate needs its day")));
}
