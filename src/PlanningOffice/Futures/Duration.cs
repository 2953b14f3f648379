using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>How long (or how dear) a thing may come out: a distribution, in whatever unit its figures are in.</summary>
public abstract record Duration
{
    public abstract double Mean { get; }

    /// <summary>Standard deviation.</summary>
    public abstract double Sd { get; }

    public abstract double Draw(Chance chance);

    /// <summary>Null when the figures make a distribution, else what is wrong.</summary>
    public abstract Refusal? Wrong { get; }

    private protected static Refusal? Positive(string field, double x) =>
        double.IsFinite(x) && x > 0 ? null : Refusal.Of(field, $"{x}", "give a number above 0");
}

/// <summary>Lognormal, told by the mean and standard deviation of the duration itself (not of its logarithm).</summary>
public sealed record Lognormal(double MeanOf, double SdOf) : Duration
{
    public override double Mean => MeanOf;

    public override double Sd => SdOf;

    public override double Draw(Chance chance)
    {
        var s2 = Math.Log(1 + SdOf / MeanOf * (SdOf / MeanOf));
        return Math.Exp(Math.Log(MeanOf) - s2 / 2 + Math.Sqrt(s2) * chance.Normal());
    }

    public override Refusal? Wrong => Positive("mean", MeanOf) ?? Positive("sd", SdOf);
}

/// <summary>
/// Beta between low and high, shaped by the likeliest value in the manner of PERT: α = 1 + 4(m − l)/(h − l),
/// β = 1 + 4(h − m)/(h − l), so that the mean is (l + 4m + h)/6. Low = high is a sure figure.
/// </summary>
public sealed record PertBeta(double Low, double Mode, double High) : Duration
{
    double Alpha => 1 + 4 * (Mode - Low) / (High - Low);

    double Beta => 1 + 4 * (High - Mode) / (High - Low);

    public override double Mean => (Low + 4 * Mode + High) / 6;

    /// <summary>The beta's own: αβ/((α+β)²(α+β+1)) with α + β = 6; the rule of thumb (h − l)/6 is not used.</summary>
    public override double Sd => High > Low ? (High - Low) * Math.Sqrt(Alpha * Beta / 252) : 0;

    public override double Draw(Chance chance) => High > Low ? Low + (High - Low) * chance.Beta(Alpha, Beta) : Low;

    /// <summary>Value below which a share <paramref name="p"/> of the cases lies; right to about 1e-5 of the range for p from 0.001 to 0.999.</summary>
    public double Quantile(double p) => High > Low ? Low + (High - Low) * new PertShape((Mode - Low) / (High - Low)).Quantile(p) : Low;

    public override Refusal? Wrong =>
        double.IsFinite(Low) && double.IsFinite(High) && Low <= Mode && Mode <= High && Low >= 0 ? null
        : Refusal.Of("low / likely / high", $"{Low} / {Mode} / {High}", "they must rise (or be equal), from 0 up");
}

public sealed record Gamma(double Shape, double Scale) : Duration
{
    public override double Mean => Shape * Scale;

    public override double Sd => Math.Sqrt(Shape) * Scale;

    public override double Draw(Chance chance) => Scale * chance.Gamma(Shape);

    public override Refusal? Wrong => Positive("shape", Shape) ?? Positive("scale", Scale);
}

public sealed record Exponential(double MeanOf) : Duration
{
    public override double Mean => MeanOf;

    public override double Sd => MeanOf;

    public override double Draw(Chance chance) => -MeanOf * Math.Log(1 - chance.Uniform());

    public override Refusal? Wrong => Positive("mean", MeanOf);
}
