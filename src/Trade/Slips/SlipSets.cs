using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Trade;

/// <summary>A boxed set of slip gauges.</summary>
/// <param name="Name"><c>m88</c> is of 88 metric blocks, <c>e81</c> of 81 in inches.</param>
/// <param name="Step">Unit in which all its blocks are whole numbers, mm: half a micrometre, or a tenth of a thou.</param>
/// <param name="Blocks">In that unit, smallest first.</param>
public sealed record SlipSet(string Name, bool Inch, double Step, ImmutableArray<int> Blocks, Source Source)
{
    /// <summary>mm.</summary>
    public double Mm(int block) => block * Step;
}

/// <summary>Sets of slip gauges in trade, and how true their blocks are.</summary>
public static class SlipSets
{
    const double MetricStep = 0.0005;
    const double InchStep = Inch.Mm / 10_000;

    public static ImmutableArray<SlipSet> All { get; } = [.. Table
        .Read("Slips/sets.csv", r => (Set: r["set"], Inch: r["unit"] == "in", From: r.Number("from"), Step: r.Number("step"), Count: (int)r.Number("count"), Source: r.Source()))
        .GroupBy(r => r.Set)
        .Select(g => new SlipSet(g.Key, g.First().Inch, g.First().Inch ? InchStep : MetricStep,
            [.. g.SelectMany(r => Enumerable.Range(0, r.Count).Select(i => (int)Math.Round((r.From + i * r.Step) * (r.Inch ? 10_000 : 2_000)))).Order()], g.First().Source))];

    /// <param name="name"><c>m46</c>, <c>m47</c>, <c>m88</c>, <c>m112</c> or <c>e81</c>; capitals do not count.</param>
    public static Parsed<SlipSet> Of(string name) =>
        All.FirstOrDefault(s => s.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } set ? set
            : Refusal.Of("slip set", name, $"name one of {string.Join(", ", All.Select(s => s.Name))}");

    static readonly ImmutableArray<(double To, string Grade, double Limit, Source Source)> Limits = Table.Read("Slips/grades.csv",
        r => (r.Number("to_mm"), r["grade"], r.Number("limit_um") / 1000, r.Source()));

    public static Source LimitsSource { get; } = Limits[0].Source;

    /// <summary>Grades known, truest first.</summary>
    public static ImmutableArray<string> Grades { get; } = [.. Limits.Select(l => l.Grade).Distinct()];

    /// <summary>How far a block may be from its size at any point of its face, mm (± limit).</summary>
    /// <param name="mm">Its size, up to 1,000 mm.</param>
    /// <param name="grade">0, 1 or 2.</param>
    public static Parsed<double> Limit(double mm, string grade)
    {
        foreach (var (to, g, limit, _) in Limits)
            if (g == grade && mm <= to) return limit;
        return Grades.Contains(grade) ? Refusal.Of("slip gauge", $"{mm:0.###} mm", "the table of grades holds blocks up to 1000 mm")
            : Refusal.Of("grade", grade, $"write {string.Join(", ", Grades)}");
    }
}
