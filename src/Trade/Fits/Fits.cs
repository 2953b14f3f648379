using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;

namespace WitnessMark.Trade;

/// <summary>Limits of size of one tolerance class in one range of nominal sizes (ISO 286).</summary>
/// <param name="Over">mm, not included.</param>
/// <param name="To">mm, included.</param>
/// <param name="Class"><c>H7</c> (hole) or <c>p6</c> (shaft).</param>
/// <param name="Upper">Upper deviation from nominal, mm.</param>
/// <param name="Lower">Lower deviation from nominal, mm.</param>
public sealed record Limits(double Over, double To, string Class, double Upper, double Lower, Source Source)
{
    public bool Hole => char.IsUpper(Class[0]);
}

/// <summary>A hole and a shaft together, mm: positive is clearance, negative interference.</summary>
public sealed record Fit(Limits Hole, Limits Shaft)
{
    public double MostClearance => Hole.Upper - Shaft.Lower;

    public double LeastClearance => Hole.Lower - Shaft.Upper;
}

/// <summary>Limits and fits for nominal sizes over 3 to 120 mm, in the classes H6 H7 H8, h6 g6 f7 k6 n6 p6 r6 s6.</summary>
public static class Fits
{
    public static ImmutableArray<Limits> All { get; } = Table.Read("Fits/limits.csv", row => new Limits(
        row.Number("over_mm"), row.Number("to_mm"), row["class"],
        row.Number("upper_um") / 1000, row.Number("lower_um") / 1000, row.Source()));

    /// <param name="mm">Nominal size, over 3 up to 120 mm.</param>
    /// <param name="class">Capitals count: <c>H7</c> is a hole, <c>h6</c> a shaft.</param>
    public static Parsed<Limits> Of(double mm, string @class)
    {
        if (All.FirstOrDefault(l => l.Class == @class && mm > l.Over && mm <= l.To) is { } limits) return limits;
        return All.Any(l => l.Class == @class)
            ? Refusal.Of("nominal size", mm.ToString(CultureInfo.InvariantCulture), "the table holds sizes over 3 up to 120 mm")
            : Refusal.Of("tolerance class", @class, "the table holds " + string.Join(", ", All.Select(l => l.Class).Distinct()));
    }

    /// <param name="mm">Nominal size, over 3 up to 120 mm.</param>
    public static Parsed<Fit> Of(double mm, string hole, string shaft)
    {
        var (h, s) = (Of(mm, hole), Of(mm, shaft));
        if ((h.Refusal ?? s.Refusal) is { } refused) return refused;
        if (!h.Value.Hole) return Refusal.Of("hole class", hole, "a hole's class has a capital letter, such as H7");
        return s.Value.Hole ? Refusal.Of("shaft class", shaft, "a shaft's class has a small letter, such as p6") : new Fit(h.Value, s.Value);
    }
}
