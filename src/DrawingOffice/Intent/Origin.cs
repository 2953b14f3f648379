using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>A tradition of making, with the shares in which it reaches for each series. Shares need not add to 1.</summary>
/// <param name="Weight">How likely this origin is beforehand, against the others.</param>
public sealed record Origin(string Name, double Weight, ImmutableDictionary<string, double> Shares)
{
    public double Share(string series) => Shares.GetValueOrDefault(series);
}

/// <summary>What is believed before measuring. Editable; the presets are common practice.</summary>
/// <param name="OffList">Chance that the part was made to none of the listed sizes.</param>
/// <param name="Stray">Chance that a size comes from another tradition than the vehicle's: later repairs, bought-in parts.</param>
public sealed record OriginPrior(ImmutableArray<Origin> Origins, double OffList = 0.05, double Stray = 0.05)
{
    static readonly Origin British = Of("British inch", ("inch fraction", 70), ("number drill", 15), ("letter drill", 10), ("SWG", 60), ("BG", 30), ("inch plate", 15),
        ("BSW", 40), ("BSF", 35), ("BA", 20), ("BSP", 5), ("brass", 3), ("whole degrees", 1));

    static readonly Origin American = Of("American inch", ("inch fraction", 70), ("number drill", 15), ("letter drill", 10), ("MSG", 85), ("inch plate", 15),
        ("UNC", 50), ("UNF", 50), ("whole degrees", 1));

    static readonly Origin Metric = Of("metric", ("metric drill", 95), ("metric size", 100), ("metric sheet", 100), ("ISO coarse", 65), ("ISO fine", 30),
        ("BSP", 5), ("whole degrees", 1));

    static readonly Origin Cycle = Of("British cycle", ("inch fraction", 70), ("number drill", 15), ("letter drill", 10), ("SWG", 80), ("BG", 10), ("inch plate", 10),
        ("cycle", 70), ("BSW", 10), ("BSF", 10), ("BA", 10), ("whole degrees", 1));

    public static OriginPrior Unknown { get; } = Weighed(0.35, 0.25, 0.3, 0.1);
    public static OriginPrior BritishToAbout1950 { get; } = Weighed(0.85, 0.03, 0.02, 0.1);

    /// <summary>When the British motor trade went over to unified threads while sheet and drills stayed as they were.</summary>
    public static OriginPrior BritishUnified { get; } = Weighed(0.5, 0.4, 0.05, 0.05);

    public static OriginPrior NorthAmerican { get; } = Weighed(0.02, 0.93, 0.05, 0);
    public static OriginPrior ContinentalOrJapanese { get; } = Weighed(0.02, 0.03, 0.95, 0);
    public static OriginPrior CycleOrMotorcycle { get; } = Weighed(0.35, 0.05, 0.1, 0.5);

    /// <summary>Throws <see cref="RefusedException"/> when this is no distribution.</summary>
    public OriginPrior Checked()
    {
        if (!(OffList is > 0 and < 1)) throw new RefusedException(Refusal.Of("off-list chance", $"{OffList}", "it must lie between 0 and 1"));
        if (!(Stray is >= 0 and <= 1)) throw new RefusedException(Refusal.Of("stray chance", $"{Stray}", "it must lie between 0 and 1"));
        foreach (var o in Origins.IsDefault ? [] : Origins)
            foreach (var (series, share) in o.Shares.SetItem("the origin itself", o.Weight))
                if (!(share >= 0 && double.IsFinite(share)))
                    throw new RefusedException(Refusal.Of($"origin {o.Name}, share of {series}", $"{share}", "it must be 0 or more"));
        if (Origins.IsDefault || !Origins.Any(o => o.Weight > 0)) throw new RefusedException(Refusal.Of("origins", null, "at least one must have a weight above 0"));
        return this;
    }

    /// <summary>Weight of a series within an origin, strays included; over all <paramref name="among"/> they add to 1.</summary>
    internal double Weight(Origin origin, string series, ImmutableArray<string> among)
    {
        var own = Normalised(origin, series, among);
        var anyone = Origins.Sum(o => o.Weight * Normalised(o, series, among)) / Origins.Sum(o => o.Weight);
        return (1 - Stray) * own + Stray * anyone;
    }

    static double Normalised(Origin origin, string series, ImmutableArray<string> among) =>
        among.Sum(origin.Share) is var all and > 0 ? origin.Share(series) / all : 1.0 / among.Length;

    static OriginPrior Weighed(double british, double american, double metric, double cycle) =>
        new([British with { Weight = british }, American with { Weight = american }, Metric with { Weight = metric }, Cycle with { Weight = cycle }]);

    static Origin Of(string name, params ReadOnlySpan<(string Series, double Share)> shares)
    {
        var table = ImmutableDictionary.CreateBuilder<string, double>();
        foreach (var (series, share) in shares) table[series] = share;
        return new Origin(name, 1, table.ToImmutable());
    }
}
