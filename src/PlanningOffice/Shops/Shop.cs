using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.PlanningOffice;

/// <summary>
/// What the person's shop can do. Thicknesses are for mild steel of <see cref="QuotedStrength"/>, as tools are sold;
/// null means the shop has none.
/// </summary>
/// <param name="Currency">ISO 4217 code that all its prices are in.</param>
public sealed record Shop(
    string Name,
    string Currency,
    ImmutableArray<CutTool> Cutters,
    Folder? Folder,
    Vice? Vice,
    Drill? Drill,
    ImmutableArray<WeldKind> Welders,
    Lathe? Lathe,
    Rates Rates,
    Prices Prices,
    StockList Stock)
{
    /// <summary>
    /// Tensile strength that thickness capacities are taken to be quoted at, MPa: the upper limit of DC01 sheet (EN 10130).
    /// </summary>
    public const double QuotedStrength = 410;

    /// <summary>
    /// The mild steel that asks as much of a shear or folder: force grows with UTS·T² (V-die force F = K·UTS·w·T²/D),
    /// so T·√(UTS/410). mm.
    /// </summary>
    public static double AsMildSteel(double thickness, double strength) => thickness * Math.Sqrt(strength / QuotedStrength);

    public Refusal? Wrong =>
        Currencies.Wrong("currency", Currency)
        ?? (Cutters.IsDefault || Welders.IsDefault || Stock.Sheets.IsDefault || Stock.BarDiameters.IsDefault
            ? Refusal.Of("shop", null, "cutters, welders, sheets and bars are lists; they may be empty") : null)
        ?? Capacity("cutter thickness", Cutters.Select(c => c.MaxThickness))
        ?? Capacity("folder", Folder is { } f ? [f.Width, f.MaxThickness, f.MaxAngle] : [])
        ?? Capacity("vice", Vice is { } v ? [v.JawWidth, v.MaxThickness] : [])
        ?? Capacity("drill", Drill is { } d ? [d.MaxDiameter] : [])
        ?? Capacity("lathe", Lathe is { } l ? [l.Swing, l.BetweenCentres] : [])
        ?? Capacity("stock sheet", Stock.Sheets.SelectMany(s => new[] { s.Width, s.Height }))
        ?? Capacity("stock bar", Stock.BarDiameters)
        ?? new[] { Stock.Gap, Stock.BarAllowance, Stock.EndAllowance }.Where(x => x is not (>= 0 and < 1000))
            .Select(x => Refusal.Of("stock allowance", $"{x}", "give a size from 0 to 1000 mm")).FirstOrDefault()
        ?? Cutters.Select(c => c.MinutesPerMetre).Concat(Rates.All).Concat(Prices.All).Select(r => r.Value.Wrong).FirstOrDefault(r => r is not null)
        ?? (Enum.GetValues<OutsideWork>().All(Prices.Outside.ContainsKey) ? null
            : Refusal.Of("prices of sent-out work", null, $"give one for each of {string.Join(", ", Enum.GetNames<OutsideWork>())}"));

    static Refusal? Capacity(string field, IEnumerable<double> sizes) =>
        sizes.Where(x => x is not (> 0 and < 1e6)).Select(x => Refusal.Of(field, $"{x}", "give a size above 0, or leave the tool out")).FirstOrDefault();

    /// <summary>A small shed to begin from and edit.</summary>
    public static Shop Usual { get; } = new(
        "shed", "GBP",
        [
            new("hand snips", 1.2, Rate.Common(6, 10, 20)),
            new("bench shear", 3, Rate.Common(4, 8, 15)),
            new("hacksaw and file", 6, Rate.Common(40, 80, 150)),
        ],
        new("bench folder", 600, 1.63, 135 * Math.PI / 180),
        new("bench vice and hammer", 125, 3),
        new("bench drill", 13),
        [WeldKind.Mig],
        null,
        Rates.Usual,
        Prices.Usual,
        StockList.Usual);
}

/// <param name="MaxThickness">mm of mild steel.</param>
/// <param name="MinutesPerMetre">Of cut, one thickness.</param>
public sealed record CutTool(string Name, double MaxThickness, Rate MinutesPerMetre);

/// <param name="Width">Longest bend, mm.</param>
/// <param name="MaxThickness">Over the full width, mm of mild steel.</param>
/// <param name="MaxAngle">How far it turns the sheet from flat, radians.</param>
public sealed record Folder(string Name, double Width, double MaxThickness, double MaxAngle);

/// <param name="JawWidth">Longest bend hammered over in it, mm.</param>
/// <param name="MaxThickness">mm of mild steel.</param>
public sealed record Vice(string Name, double JawWidth, double MaxThickness);

/// <param name="MaxDiameter">mm.</param>
public sealed record Drill(string Name, double MaxDiameter);

/// <param name="Swing">Largest diameter turned, mm.</param>
/// <param name="BetweenCentres">Longest work, mm.</param>
public sealed record Lathe(string Name, double Swing, double BetweenCentres);

public enum WeldKind { Gas, Arc, Mig, Tig, Spot, Braze }

static class WeldKinds
{
    public static string Words(this WeldKind kind) => kind switch
    {
        WeldKind.Mig => "MIG",
        WeldKind.Tig => "TIG",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
