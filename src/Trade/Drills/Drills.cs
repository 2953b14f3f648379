using System.Collections.Immutable;
using System.Globalization;

namespace WitnessMark.Trade;

/// <summary>Twist drills by series, and the nearest one to a size.</summary>
public static class Drills
{
    /// <summary>1 to 80, largest first.</summary>
    public static ImmutableArray<NominalSize> Number { get; } = Table.Read("Drills/number.csv", row =>
        new NominalSize($"No. {row["number"]} drill", "number drill", row.Inches("inch"), row.Source()));

    /// <summary>A to Z, smallest first.</summary>
    public static ImmutableArray<NominalSize> Letter { get; } = Table.Read("Drills/letter.csv", row =>
        new NominalSize($"{row["letter"]} drill", "letter drill", row.Inches("inch"), row.Source()));

    /// <summary>1/64 to 1 in by sixty-fourths.</summary>
    public static ImmutableArray<NominalSize> Fraction { get; } =
        [.. Fractions.UpTo(25.4).Select(f => f with { Name = f.Name + " drill", Series = "inch drill" })];

    /// <summary>The metric sizes of BS 328, 0.2 to 25 mm.</summary>
    public static ImmutableArray<NominalSize> Metric { get; } = [.. MetricHundredths().Select(h => new NominalSize(
        (h / 100.0).ToString("0.0#", CultureInfo.InvariantCulture) + " mm drill", "metric drill", h / 100.0, Sources.Of("wikipedia-drills")))];

    /// <summary>All series, smallest first.</summary>
    public static ImmutableArray<NominalSize> All { get; } =
        [.. Number.Concat(Letter).Concat(Fraction).Concat(Metric).OrderBy(d => d.Mm)];

    /// <param name="mm">Diameter.</param>
    public static NominalSize Nearest(double mm, ImmutableArray<NominalSize> among) => among.MinBy(d => Math.Abs(d.Mm - mm))!;

    /// <summary>0.2 by 0.02, 0.05 and 0.08 to 1; by 0.05 to 3; by 0.1 to 14; by 0.25 to 25.</summary>
    static IEnumerable<int> MetricHundredths()
    {
        for (var tenth = 20; tenth < 100; tenth += 10)
            foreach (var h in (int[])[0, 2, 5, 8]) yield return tenth + h;
        for (var h = 100; h < 300; h += 5) yield return h;
        for (var h = 300; h < 1400; h += 10) yield return h;
        for (var h = 1400; h <= 2500; h += 25) yield return h;
    }
}
