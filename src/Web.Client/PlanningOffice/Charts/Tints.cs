using OxyPlot;

namespace WitnessMark.Web.Client.PlanningOffice.Charts;

/// <summary>
/// Colours that stand for words: the drawing names a class and the page's style sheet says what it looks like by day, by night and in
/// print. The figures only tell them apart.
/// </summary>
static class Tints
{
    public static readonly OxyColor Ink = OxyColor.FromRgb(0, 0, 1);
    public static readonly OxyColor Quiet = OxyColor.FromRgb(0, 0, 2);
    public static readonly OxyColor Rule = OxyColor.FromRgb(0, 0, 3);
    public static readonly OxyColor Accent = OxyColor.FromRgb(0, 0, 4);
    public static readonly OxyColor Band = OxyColor.FromRgb(0, 0, 5);
    public static readonly OxyColor Warn = OxyColor.FromRgb(0, 0, 6);
    public static readonly OxyColor WarnBand = OxyColor.FromRgb(0, 0, 7);

    /// <summary>Null where nothing is to be seen.</summary>
    public static string? Word(OxyColor colour) =>
        colour.IsUndefined() || colour.IsAutomatic() || colour.IsInvisible() ? null
        : colour == Quiet ? "quiet" : colour == Rule ? "rule" : colour == Accent ? "accent" : colour == Band ? "band"
        : colour == Warn ? "warn" : colour == WarnBand ? "warn-band" : "ink";
}
