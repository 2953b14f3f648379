using System.Collections.Immutable;
using WitnessMark.Maths.Units;

namespace WitnessMark.Trade;

/// <summary>The thread tables.</summary>
public static class Threads
{
    public static ImmutableArray<ScrewThread> All { get; } =
    [
        .. Load("bsw", ThreadSeries.Bsw, ThreadForm.Whitworth, (size, _) => $"{size} BSW"),
        .. Load("bsf", ThreadSeries.Bsf, ThreadForm.Whitworth, (size, _) => $"{size} BSF"),
        .. Load("ba", ThreadSeries.Ba, ThreadForm.Ba, (size, _) => $"{size} BA"),
        .. Load("unc", ThreadSeries.Unc, ThreadForm.MetricAndUnified, (size, tpi) => $"{size}-{tpi} UNC"),
        .. Load("unf", ThreadSeries.Unf, ThreadForm.MetricAndUnified, (size, tpi) => $"{size}-{tpi} UNF"),
        .. Load("metric-coarse", ThreadSeries.MetricCoarse, ThreadForm.MetricAndUnified, (size, _) => size),
        .. Load("metric-fine", ThreadSeries.MetricFine, ThreadForm.MetricAndUnified, (size, _) => size),
        .. Load("bsp", ThreadSeries.Bsp, ThreadForm.Whitworth, (size, _) => $"{size} BSP"),
        .. Load("cycle", ThreadSeries.Cycle, ThreadForm.Cycle, (size, tpi) => $"{size}-{tpi} cycle"),
        .. Load("brass", ThreadSeries.Brass, ThreadForm.Whitworth, (size, _) => $"{size} brass"),
    ];

    public static IEnumerable<ScrewThread> Of(ThreadSeries series) => All.Where(t => t.Series == series);

    /// <summary>By name, whatever the spacing and capitals; <c>x</c> and <c>×</c> are the same.</summary>
    public static ScrewThread? Find(string name) => All.FirstOrDefault(t => Bare(t.Name) == Bare(name));

    static string Bare(string name) =>
        new([.. name.Where(c => !char.IsWhiteSpace(c)).Select(c => c is 'x' or 'X' ? '×' : char.ToUpperInvariant(c))]);

    static ImmutableArray<ScrewThread> Load(string file, ThreadSeries series, ThreadForm form, Func<string, string, string> name) =>
        Table.Read($"Threads/Tables/{file}.csv", row =>
        {
            var byTpi = row.Has("tpi");
            return new ScrewThread(
                name(row["size"], byTpi ? row["tpi"] : ""), series, form,
                row.Has("od_in") ? row.Inches("od_in") : row.Number("od_mm"),
                byTpi ? Inch.Mm / row.Number("tpi") : row.Number("pitch_mm"),
                row.NumberOrNone("tap_drill_mm"),
                row.Source(),
                row.Has("tap_drill_source") ? row.Source("tap_drill_source") : null);
        });
}
