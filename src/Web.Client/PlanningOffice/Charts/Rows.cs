using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace WitnessMark.Web.Client.PlanningOffice.Charts;

/// <summary>Rows from the top down, each with its label: beside it where there is room, above it on a phone.</summary>
static class Rows
{
    /// <summary>Share of a row's height that its bar takes.</summary>
    public const double BarShare = 0.5;

    public static bool Narrow(double width) => width < Paper.NarrowBelow;

    /// <summary>px.</summary>
    public static double Height(int rows, double width) => rows * (Narrow(width) ? 46 : 30) + 44;

    public static void Add(PlotModel model, IReadOnlyList<string> labels, double left, double width)
    {
        var narrow = Narrow(width);
        var axis = new CategoryAxis
        {
            Position = AxisPosition.Left,
            StartPosition = 1,
            EndPosition = 0,
            GapWidth = narrow ? 2.2 : 1,
            TickStyle = TickStyle.None,
            MajorTickSize = 0,
            AxislineStyle = LineStyle.None,
            TextColor = Tints.Ink,
        };
        var beside = width * 0.34;
        axis.Labels.AddRange(labels.Select(l => narrow ? "" : Letters.Within(l, beside, Paper.FontSize)));
        model.Axes.Add(axis);
        if (narrow)
            for (var i = 0; i < labels.Count; i++)
                model.Annotations.Add(new TextAnnotation
                {
                    Text = Letters.Within(labels[i], width - 50, Paper.FontSize),
                    TextPosition = new(left, i - 0.22),
                    TextHorizontalAlignment = HorizontalAlignment.Left,
                    TextVerticalAlignment = VerticalAlignment.Bottom,
                    TextColor = Tints.Ink,
                    StrokeThickness = 0,
                    Padding = new(0),
                    Layer = AnnotationLayer.AboveSeries,
                });
    }
}
