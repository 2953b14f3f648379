using OxyPlot;
using OxyPlot.Series;

namespace WitnessMark.Web.Client.PlanningOffice.Charts;

/// <summary>A piece of the plan: from its P50 start to its P50 end, with a whisker to the P90 of its end.</summary>
public sealed record BarRow(string Label, DateOnly Start, DateOnly End, DateOnly Late);

/// <summary>A day worth reaching: P10, P50 and P90, and the day it is wanted by, if there is one.</summary>
public sealed record MarkRow(string Label, DateOnly Early, DateOnly Middle, DateOnly Late, DateOnly? Wanted);

/// <summary>The plan as bars over the calendar, milestones first.</summary>
public static class PlanBars
{
    /// <summary>Half the height of a whisker's cap, as a share of a row.</summary>
    const double Cap = 0.14;

    /// <param name="width">px.</param>
    /// <returns>SVG.</returns>
    public static string Svg(ChartHead head, IReadOnlyList<MarkRow> marks, IReadOnlyList<BarRow> bars, DateOnly today, double width)
    {
        var model = Paper.Blank();
        var last = marks.Select(m => m.Wanted is { } w && w > m.Late ? w : m.Late).Concat(bars.Select(b => b.Late)).Append(today).Max();
        model.Axes.Add(Paper.Days(today, last.AddDays(Math.Max(3, (last.DayNumber - today.DayNumber) / 40))));
        Rows.Add(model, [.. marks.Select(m => m.Label), .. bars.Select(b => b.Label)], Paper.Day(today), width);
        model.Annotations.Add(Paper.Upright(today, Tints.Accent, LineStyle.Solid));
        AddBars(model, bars, marks.Count);
        AddWhiskers(model, [.. marks.Select(m => (m.Early, m.Late)), .. bars.Select(b => (b.End, b.Late))]);
        AddMarks(model, marks);
        return Paper.Svg(model, head, width, Rows.Height(marks.Count + bars.Count, width));
    }

    static void AddBars(PlotModel model, IReadOnlyList<BarRow> bars, int below)
    {
        // The library asks for a label's format even where no label is wanted.
        var series = new IntervalBarSeries { FillColor = Tints.Accent, StrokeThickness = 0, LabelFormatString = "" };
        for (var i = 0; i < bars.Count; i++)
            series.Items.Add(new() { CategoryIndex = below + i, Start = Paper.Day(bars[i].Start), End = Math.Max(Paper.Day(bars[i].End), Paper.Day(bars[i].Start) + 0.5) });
        model.Series.Add(series);
    }

    static void AddWhiskers(PlotModel model, List<(DateOnly From, DateOnly To)> rows)
    {
        var line = new LineSeries { Color = Tints.Ink, StrokeThickness = 1.5 };
        for (var i = 0; i < rows.Count; i++)
        {
            var (from, to) = (Paper.Day(rows[i].From), Paper.Day(rows[i].To));
            line.Points.AddRange([new(from, i), new(to, i), DataPoint.Undefined, new(to, i - Cap), new(to, i + Cap), DataPoint.Undefined]);
        }
        model.Series.Add(line);
    }

    static void AddMarks(PlotModel model, IReadOnlyList<MarkRow> marks)
    {
        var reached = new ScatterSeries { MarkerType = MarkerType.Diamond, MarkerSize = 6, MarkerFill = Tints.Ink, MarkerStroke = Tints.Ink };
        var wanted = new LineSeries { Color = Tints.Warn, StrokeThickness = 3 };
        for (var i = 0; i < marks.Count; i++)
        {
            reached.Points.Add(new(Paper.Day(marks[i].Middle), i));
            if (marks[i].Wanted is { } day) wanted.Points.AddRange([new(Paper.Day(day), i - 2 * Cap), new(Paper.Day(day), i + 2 * Cap), DataPoint.Undefined]);
        }
        model.Series.Add(wanted);
        model.Series.Add(reached);
    }
}
