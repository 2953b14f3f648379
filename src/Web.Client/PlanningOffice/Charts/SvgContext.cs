using System.Globalization;
using System.Net;
using System.Text;
using OxyPlot;

namespace WitnessMark.Web.Client.PlanningOffice.Charts;

/// <summary>
/// Writes what the chart library draws as SVG in px. Colours are classes (<see cref="Tints"/>) and no font is named, so that the page's
/// own style sheet rules; there is no inline style, which the content policy forbids. Nothing is clipped: the axes hold all that is drawn.
/// </summary>
sealed class SvgContext : RenderContextBase
{
    readonly StringBuilder _svg = new();
    int _clips;

    public string Marks => _svg.ToString();

    public override int ClipCount => _clips;

    public override void PushClip(OxyRect clippingRectangle) => _clips++;

    public override void PopClip() => _clips--;

    public override void DrawLine(
        IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin)
    {
        if (points.Count > 1 && Line(stroke, thickness) is { Length: > 0 } pen)
            _svg.Append($"<path d=\"{Path(points)}\" class=\"{pen}\" fill=\"none\" stroke-width=\"{N(thickness)}\"{Dashes(dashArray, thickness)}/>\n");
    }

    public override void DrawPolygon(
        IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin)
    {
        if (points.Count > 2 && Classes(fill, stroke, thickness) is { Length: > 0 } classes) _svg.Append($"<path d=\"{Path(points)}Z\" class=\"{classes}\"{Plain(fill)}/>\n");
    }

    public override void DrawRectangle(OxyRect rectangle, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode)
    {
        if (Classes(fill, stroke, thickness) is { Length: > 0 } classes)
            _svg.Append($"<rect x=\"{N(rectangle.Left)}\" y=\"{N(rectangle.Top)}\" width=\"{N(rectangle.Width)}\" height=\"{N(rectangle.Height)}\" class=\"{classes}\"{Plain(fill)}/>\n");
    }

    public override void DrawText(
        ScreenPoint p, string text, OxyColor fill, string fontFamily, double fontSize, double fontWeight, double rotation,
        HorizontalAlignment horizontalAlignment, VerticalAlignment verticalAlignment, OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text) || Tints.Word(fill) is not { } tint) return;
        var anchor = horizontalAlignment switch { HorizontalAlignment.Left => "start", HorizontalAlignment.Right => "end", _ => "middle" };
        // A capital is about 0.72 of the font's size.
        var down = fontSize * verticalAlignment switch { VerticalAlignment.Top => 0.86, VerticalAlignment.Bottom => -0.14, _ => 0.36 };
        var turn = rotation == 0 ? "" : $" transform=\"rotate({N(rotation)} {N(p.X)} {N(p.Y)})\"";
        _svg.Append($"<text x=\"{N(p.X)}\" y=\"{N(p.Y + down)}\" font-size=\"{N(fontSize)}\" text-anchor=\"{anchor}\" class=\"fill-{tint}\"{turn}>{WebUtility.HtmlEncode(text)}</text>\n");
    }

    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight) =>
        string.IsNullOrEmpty(text) ? OxySize.Empty : new(Letters.Width(text, fontSize), fontSize * 1.2);

    static string Classes(OxyColor fill, OxyColor stroke, double thickness) =>
        string.Join(' ', new[] { Tints.Word(fill) is { } f ? $"fill-{f}" : "", Line(stroke, thickness) }.Where(c => c.Length > 0));

    static string Line(OxyColor stroke, double thickness) => thickness > 0 && Tints.Word(stroke) is { } s ? $"line-{s}" : "";

    static string Plain(OxyColor fill) => Tints.Word(fill) is null ? " fill=\"none\"" : "";

    static string Dashes(double[]? dashes, double thickness) =>
        dashes is { Length: > 0 } ? $" stroke-dasharray=\"{string.Join(' ', dashes.Select(d => N(d * thickness)))}\"" : "";

    static string Path(IList<ScreenPoint> points) => $"M{string.Join('L', points.Select(p => $"{N(p.X)} {N(p.Y)}"))}";

    /// <summary>To a hundredth of a px.</summary>
    static string N(double x) => Math.Round(x, 2).ToString("0.##", CultureInfo.InvariantCulture);
}
