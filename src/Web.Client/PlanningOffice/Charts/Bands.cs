using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace WitnessMark.Web.Client.PlanningOffice.Charts;

/// <summary>Where a quantity lies on a day over the futures.</summary>
public readonly record struct BandPoint(DateOnly On, double P10, double P50, double P90);

/// <summary>Quantities that run over the calendar: eight in ten futures lie in the band, half below its line.</summary>
public static class Bands
{
    const double Height = 300;

    /// <summary>Hours logged so far against what the futures say.</summary>
    /// <param name="logged">Own hours up to the day, rising.</param>
    /// <param name="ahead">Own hours by the day; the first point is today.</param>
    public static string Fan(ChartHead head, IReadOnlyList<(DateOnly On, double Hours)> logged, IReadOnlyList<BandPoint> ahead, double width)
    {
        DateOnly[] days = [.. logged.Select(l => l.On), .. ahead.Select(a => a.On)];
        var model = Framed(days, 0, logged.Select(l => l.Hours).Concat(ahead.Select(a => Math.Max(a.P10, a.P90))).DefaultIfEmpty(1).Max() * 1.05);
        AddBand(model, ahead);
        var steps = new StairStepSeries { Color = Tints.Ink, StrokeThickness = 2.2, VerticalStrokeThickness = 2.2 };
        steps.Points.AddRange(logged.Select(l => new DataPoint(Paper.Day(l.On), l.Hours)));
        model.Series.Add(steps);
        return Paper.Svg(model, head, width, Height);
    }

    /// <summary>Money month by month, with the line below which there is none.</summary>
    /// <param name="dry">When it runs dry, P10 to P90 and P50; null when it does not.</param>
    public static string Cash(ChartHead head, IReadOnlyList<BandPoint> months, (DateOnly P10, DateOnly P50, DateOnly P90)? dry, double width)
    {
        double[] all = [0, .. months.SelectMany(m => new[] { m.P10, m.P50, m.P90 })];
        var room = (all.Max() - all.Min()) * 0.05;
        DateOnly[] days = [.. months.Select(m => m.On), .. dry is { } d ? [d.P10, d.P90] : Array.Empty<DateOnly>()];
        var model = Framed(days, all.Min() - room, all.Max() + room);
        if (dry is { } span)
        {
            model.Annotations.Add(new RectangleAnnotation
            {
                MinimumX = Paper.Day(span.P10),
                MaximumX = Paper.Day(span.P90),
                Fill = Tints.WarnBand,
                StrokeThickness = 0,
                Layer = AnnotationLayer.BelowSeries,
            });
            model.Annotations.Add(Paper.Upright(span.P50, Tints.Warn, LineStyle.Dash));
        }
        AddBand(model, months);
        model.Annotations.Add(new LineAnnotation { Type = LineAnnotationType.Horizontal, Y = 0, Color = Tints.Ink, LineStyle = LineStyle.Solid, StrokeThickness = 1.5 });
        return Paper.Svg(model, head, width, Height);
    }

    static PlotModel Framed(DateOnly[] days, double low, double high)
    {
        var model = Paper.Blank();
        model.Axes.Add(Paper.Days(days.Min(), days.Max()));
        model.Axes.Add(Paper.Figures(AxisPosition.Left, low, high, "#,0.##"));
        return model;
    }

    static void AddBand(PlotModel model, IReadOnlyList<BandPoint> points)
    {
        var band = new AreaSeries { Fill = Tints.Band, Color = Tints.Band, Color2 = Tints.Band, StrokeThickness = 0 };
        var line = new LineSeries { Color = Tints.Accent, StrokeThickness = 2.2 };
        foreach (var p in points)
        {
            band.Points.Add(new(Paper.Day(p.On), p.P10));
            band.Points2.Add(new(Paper.Day(p.On), p.P90));
            line.Points.Add(new(Paper.Day(p.On), p.P50));
        }
        model.Series.Add(band);
        model.Series.Add(line);
    }
}
