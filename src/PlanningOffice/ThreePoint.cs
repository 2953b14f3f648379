using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.PlanningOffice;

/// <summary>Low, likely, high: hours, minutes or days, as the member that holds it says. Rises from 0 up.</summary>
public readonly record struct ThreePoint(double Low, double Likely, double High)
{
    public static ThreePoint Zero => default;

    public PertBeta Spread => new(Low, Likely, High);

    public Refusal? Wrong => Spread.Wrong;

    /// <summary>All low, all likely, all high together. The likely course of a sum is narrower: see the forecast.</summary>
    public static ThreePoint operator +(ThreePoint a, ThreePoint b) => new(a.Low + b.Low, a.Likely + b.Likely, a.High + b.High);

    /// <param name="k">0 or more.</param>
    public static ThreePoint operator *(ThreePoint a, double k) => new(a.Low * k, a.Likely * k, a.High * k);
}

/// <summary>A figure the person may edit, with where it comes from: common practice, or own for what was learnt in this shop.</summary>
public sealed record Rate(ThreePoint Value, string Source)
{
    public const string CommonPractice = "common practice";

    public static Rate Common(double low, double likely, double high) => new(new(low, likely, high), CommonPractice);
}

/// <summary>Money as low, likely, high in one currency (ISO 4217 code).</summary>
public readonly record struct Cost(decimal Low, decimal Likely, decimal High, string Currency)
{
    public static Cost None(string currency) => new(0, 0, 0, currency);

    /// <summary>Rounded to the hundredth.</summary>
    public static Cost Of(ThreePoint value, string currency) =>
        new(Rounded(value.Low), Rounded(value.Likely), Rounded(value.High), currency);

    public Duration Spread => new PertBeta((double)Low, (double)Likely, (double)High);

    public static Cost operator +(Cost a, Cost b) => a.Currency == b.Currency
        ? new(a.Low + b.Low, a.Likely + b.Likely, a.High + b.High, a.Currency)
        : throw new RefusedException(Refusal.Of("currency", b.Currency, $"it is added to {a.Currency}; give both in one currency"));

    static decimal Rounded(double x) => x is >= 0 and < 1e15 ? Math.Round((decimal)x, 2)
        : throw new RefusedException(Refusal.Of("cost", $"{x}", "give an amount from 0 to 1e15"));
}
