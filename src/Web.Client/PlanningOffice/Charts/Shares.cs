using OxyPlot.Axes;
using OxyPlot.Series;

namespace WitnessMark.Web.Client.PlanningOffice.Charts;

/// <summary>Parts of a whole as bars, in percent.</summary>
public static class Shares
{
    /// <param name="rows">Shares from 0 to 1.</param>
    /// <param name="width">px.</param>
    public static string Svg(ChartHead head, IReadOnlyList<(string Label, double Share)> rows, double width)
    {
        var model = Paper.Blank();
        model.Axes.Add(Paper.Figures(AxisPosition.Bottom, 0, Math.Max(rows.Select(r => r.Share).DefaultIfEmpty(0).Max() * 115, 5), "0'%'"));
        Rows.Add(model, [.. rows.Select(r => r.Label)], 0, width);
        var bars = new BarSeries { FillColor = Tints.Accent, StrokeThickness = 0, LabelFormatString = "" };
        bars.Items.AddRange(rows.Select(r => new BarItem(r.Share * 100)));
        model.Series.Add(bars);
        return Paper.Svg(model, head, width, Rows.Height(rows.Count, width));
    }
}
