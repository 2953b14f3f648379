using System.Globalization;
using System.Net;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace WitnessMark.Web.Client.PlanningOffice.Charts;

/// <summary>What a chart is called, and what it shows in a sentence for one who cannot see it.</summary>
public sealed record ChartHead(string Title, string Words);

/// <summary>What all charts share: the sheet, its axes, and the way to SVG.</summary>
static class Paper
{
    public const double FontSize = 13;

    /// <summary>Below this width, px, labels stand above their bars instead of beside them.</summary>
    public const double NarrowBelow = 560;

    public static PlotModel Blank() => new()
    {
        Culture = CultureInfo.InvariantCulture,
        Background = OxyColors.Transparent,
        PlotAreaBorderThickness = new(0),
        // Half a date label may stand out beyond the last tick.
        Padding = new(4, 8, 30, 4),
        TextColor = Tints.Quiet,
        DefaultFontSize = FontSize,
        IsLegendVisible = false,
    };

    public static double Day(DateOnly day) => DateTimeAxis.ToDouble(day.ToDateTime(TimeOnly.MinValue));

    public static DateTimeAxis Days(DateOnly first, DateOnly last) => new()
    {
        Position = AxisPosition.Bottom,
        Minimum = Day(first),
        Maximum = Math.Max(Day(last), Day(first) + 7),
        StringFormat = last.DayNumber - first.DayNumber < 100 ? "d MMM" : last.DayNumber - first.DayNumber < 1500 ? "MMM yyyy" : "yyyy",
        IntervalLength = 110,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = Tints.Rule,
        TicklineColor = Tints.Rule,
        MinorTickSize = 0,
        TextColor = Tints.Quiet,
    };

    public static LinearAxis Figures(AxisPosition position, double low, double high, string format) => new()
    {
        Position = position,
        Minimum = low,
        Maximum = high > low ? high : low + 1,
        StringFormat = format,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = Tints.Rule,
        TicklineColor = Tints.Rule,
        MinorTickSize = 0,
        TextColor = Tints.Quiet,
    };

    public static LineAnnotation Upright(DateOnly day, OxyColor colour, LineStyle style) => new()
    {
        Type = LineAnnotationType.Vertical,
        X = Day(day),
        Color = colour,
        LineStyle = style,
        StrokeThickness = 1.5,
    };

    /// <param name="width">px.</param>
    /// <param name="height">px.</param>
    public static string Svg(PlotModel model, ChartHead head, double width, double height)
    {
        var context = new SvgContext();
        var plot = (IPlotModel)model;
        plot.Update(true);
        plot.Render(context, new(0, 0, width, height));
        if (model.GetLastPlotException() is { } fault) throw new InvalidOperationException($"The chart \"{head.Title}\" could not be drawn.", fault);
        return string.Create(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"wm-chart\" role=\"img\" viewBox=\"0 0 {width:0.#} {height:0.#}\" width=\"{width:0.#}\" height=\"{height:0.#}\">\n")
            + $"<title>{WebUtility.HtmlEncode(head.Title)}</title>\n<desc>{WebUtility.HtmlEncode(head.Words)}</desc>\n{context.Marks}</svg>\n";
    }
}
