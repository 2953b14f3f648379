using System.Collections.Immutable;

namespace WitnessMark.Trade;

/// <summary>Which gauge a number belongs to. The numbers look alike; the thicknesses do not.</summary>
public enum GaugeSeries
{
    /// <summary>Imperial standard wire gauge: British wire and sheet.</summary>
    Swg,

    /// <summary>Birmingham gauge of 1914: British black and galvanised sheet. Not the Birmingham wire gauge.</summary>
    Bg,

    /// <summary>US manufacturers' standard gauge: American sheet steel.</summary>
    Msg,

    /// <summary>Birmingham (Stubs') wire gauge: tube walls and old wire.</summary>
    Bwg,

    /// <summary>American (Brown and Sharpe) wire gauge: copper wire, non-ferrous sheet.</summary>
    Awg,
}

/// <summary>Wire and sheet gauges, thickest first within a series.</summary>
public static class Gauges
{
    public static ImmutableArray<NominalSize> Swg { get; } = Load(GaugeSeries.Swg);

    public static ImmutableArray<NominalSize> Bg { get; } = Load(GaugeSeries.Bg);

    public static ImmutableArray<NominalSize> Bwg { get; } = Load(GaugeSeries.Bwg);

    public static ImmutableArray<NominalSize> Msg { get; } = Load(GaugeSeries.Msg);

    /// <summary>d = 0.127 mm × 92^((36 − n)/39); 0 is n = 0, 2/0 is n = −1 (ASTM B258).</summary>
    public static ImmutableArray<NominalSize> Awg { get; } =
        [.. Enumerable.Range(-3, 44).Select(n => new NominalSize(
            Name(n < 0 ? $"{1 - n}/0" : $"{n}", GaugeSeries.Awg), "AWG", 0.127 * Math.Pow(92, (36 - n) / 39.0), Sources.Computed))];

    public static ImmutableArray<NominalSize> All { get; } = [.. Swg, .. Bg, .. Bwg, .. Msg, .. Awg];

    public static ImmutableArray<NominalSize> Of(GaugeSeries series) => series switch
    {
        GaugeSeries.Swg => Swg,
        GaugeSeries.Bg => Bg,
        GaugeSeries.Bwg => Bwg,
        GaugeSeries.Msg => Msg,
        _ => Awg,
    };

    /// <param name="number"><c>14</c> or <c>2/0</c>.</param>
    /// <returns>None when the series has no such number.</returns>
    public static NominalSize? Find(GaugeSeries series, string number) =>
        Of(series).FirstOrDefault(g => g.Name == Name(number, series));

    static string Name(string number, GaugeSeries series) => $"{number} {series.ToString().ToUpperInvariant()}";

    static ImmutableArray<NominalSize> Load(GaugeSeries series)
    {
        var name = series.ToString().ToLowerInvariant();
        return Table.Read($"Gauges/{name}.csv", row => new NominalSize(
            Name(row["number"], series), name.ToUpperInvariant(), row.Inches("inch"), row.Source()));
    }
}
