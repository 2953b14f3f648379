using System.Collections.Immutable;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Intent.Tables;

/// <summary>Which sizes each kind of thing is made to, from the trade tables.</summary>
public static class Catalogue
{
    const string MetricDrill = "metric drill", InchPlate = "inch plate";

    static readonly ImmutableArray<(ThreadSeries Series, string Name)> ThreadNames =
    [
        (ThreadSeries.Bsw, "BSW"), (ThreadSeries.Bsf, "BSF"), (ThreadSeries.Ba, "BA"), (ThreadSeries.Unc, "UNC"), (ThreadSeries.Unf, "UNF"),
        (ThreadSeries.MetricCoarse, "ISO coarse"), (ThreadSeries.MetricFine, "ISO fine"), (ThreadSeries.Bsp, "BSP"), (ThreadSeries.Cycle, "cycle"),
        (ThreadSeries.Brass, "brass"),
    ];

    static readonly Lazy<ImmutableArray<Candidate>> Studs = new(() => ThreadsBy(t => t.Core));

    // The bore of a nut follows the tapping drill; where none is listed, 82 % of full depth (common practice, 77 to 87 %).
    static readonly Lazy<ImmutableArray<Candidate>> Nuts = new(() => ThreadsBy(t => t.TapDrill ?? t.Diameter - 1.05 * t.Pitch));

    static readonly Lazy<ImmutableArray<Candidate>> ListedDrills = new(() =>
    [
        .. Listed.Sizes(Drills.Number, "number drill"),
        .. Listed.Sizes(Drills.Letter, "letter drill"),
        .. Drills.Metric.Select(d => new Candidate(d.Name, MetricDrill, d.Mm, MetricDrillMass(d.Mm)) { Source = d.Source.Title }),
    ]);

    static readonly Lazy<ImmutableArray<Candidate>> ListedSheets = new(() =>
    [
        .. Listed.Sizes(Gauges.Swg, "SWG"),
        .. Listed.Sizes(Gauges.Bg, "BG"),
        .. Listed.Sizes(Gauges.Msg, "MSG"),
        .. Listed.Sizes(MetricSheet, "metric sheet"),
    ]);

    // What it is made of is not known: the thicknesses of all the stock families.
    static IEnumerable<NominalSize> MetricSheet =>
        SheetStock.All.DistinctBy(s => s.Mm).Select(s => s with { Name = $"{s.Mm:0.0} mm sheet" });

    /// <summary>Every series that a kind of thing is made to.</summary>
    public static ImmutableArray<string> SeriesOf(Subject subject) => subject switch
    {
        Subject.ExternalThread or Subject.InternalThread => [.. ThreadNames.Select(t => t.Name)],
        Subject.Hole => [Ladder.InchSeries, "number drill", "letter drill", MetricDrill],
        Subject.Sheet => [InchPlate, "SWG", "BG", "MSG", "metric sheet"],
        Subject.Angle => [Ladder.DegreeSeries],
        _ => [Ladder.InchSeries, Ladder.MetricSeries],
    };

    /// <summary>The sizes that could explain what was measured.</summary>
    public static Shortlist Near(Question question, Practice practice)
    {
        var (low, high) = Evidence.Reach(question.Checked(), practice.Checked());
        return new Shortlist(SeriesOf(question.Subject), Between(question.Subject, question.Principal, low, high));
    }

    /// <param name="low">mm; radians of an angle.</param>
    public static ImmutableArray<Candidate> Between(Subject subject, Facet principal, double low, double high)
    {
        var all = subject switch
        {
            Subject.ExternalThread => Studs.Value,
            Subject.InternalThread => Nuts.Value,
            Subject.Hole => Ladder.InchFractions(low, high).Concat(ListedDrills.Value).Concat(LargeMetric(low, high)),
            Subject.Sheet => Ladder.InchFractions(low, high, InchPlate).Concat(ListedSheets.Value),
            Subject.Angle => Ladder.HalfDegrees(low, high),
            _ => Ladder.InchFractions(low, high).Concat(Ladder.MetricTenths(low, high)),
        };
        return [.. all.Where(c => c.Of(principal) is { } size && size >= low && size <= high)];
    }

    static IEnumerable<Candidate> LargeMetric(double low, double high) =>
        Ladder.MetricTenths(Math.Max(low, Drills.Metric.Max(d => d.Mm) + 0.05), high, MetricDrill);

    // Whole millimetres likeliest, then halves, then the rest of the listed drills; shares are common practice.
    static double MetricDrillMass(double mm) => Math.Round(mm * 100) switch
    {
        var h when h % 100 == 0 => Ladder.Mass(0.45, 1, mm),
        var h when h % 50 == 0 => Ladder.Mass(0.2, 1, mm),
        var h when h % 10 == 0 => Ladder.Mass(0.3, 1 / 8.0, mm),
        _ => Ladder.Mass(0.05, 1 / 10.0, mm),
    };

    static ImmutableArray<Candidate> ThreadsBy(Func<ScrewThread, double> core) =>
        [.. ThreadNames.SelectMany(t => Listed.Screws(Threads.Of(t.Series), t.Name, core))];
}
