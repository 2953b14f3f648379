using System.Collections.Immutable;
using System.Globalization;

namespace WitnessMark.Trade;

/// <summary>Thicknesses that can be bought. Old parts were made to gauge; their sheet is bought to the nearest millimetre size.</summary>
public static class SheetStock
{
    /// <summary>By family, thinnest first; the series is the family.</summary>
    public static ImmutableArray<NominalSize> All { get; } = Table.Read("Stock/sheet.csv", row =>
    {
        var mm = row.Number("thickness_mm");
        return new NominalSize($"{mm.ToString("0.0", CultureInfo.InvariantCulture)} mm {row["family"]}", row["family"], mm, row.Source());
    });

    /// <param name="family"><c>steel</c>, <c>aluminium</c>, <c>brass</c> or <c>copper</c>.</param>
    public static ImmutableArray<NominalSize> Of(string family) =>
        [.. All.Where(s => s.Series.Equals(family, StringComparison.OrdinalIgnoreCase))];

    /// <summary>The nearest stock on each side of a thickness, mm; one side is none past the end of the list.</summary>
    public static (NominalSize? Thinner, NominalSize? Thicker) Around(string family, double mm) =>
        (Of(family).LastOrDefault(s => s.Mm <= mm), Of(family).FirstOrDefault(s => s.Mm >= mm));
}
