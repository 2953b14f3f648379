using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>
/// A measured bracket or weldment on a sheet: three square views with hidden lines dashed, a pictorial, the lengths and setting angles that are
/// seen true, and tables of holes, corners, faces and heights, each figure with its ±. All lettering is 2.5 mm high or more.
/// </summary>
/// <param name="Sheets">The drawing first, then sheets with what did not fit on it.</param>
/// <param name="Dimensions">Each length and angle in the views, in number order.</param>
public sealed record SolidDrawing(ImmutableArray<PrintRoom.Sheet> Sheets, ImmutableArray<SolidDimension> Dimensions, DrawingScale Scale, PaperSize Paper)
{
    /// <summary>Sheets that lie on their side: three views are broad.</summary>
    public static DrawingOptions Usual { get; } = new() { Papers = [PaperSize.A4.Turned, PaperSize.A3.Turned] };

    /// <exception cref="RefusedException">Nothing of the part has a place, or it fits no offered sheet at the asked scale.</exception>
    public static SolidDrawing Draw(SolidPart part, TitleFields title, DrawingOptions? options = null)
    {
        var wish = options ?? Usual;
        var size = Size(part);
        IEnumerable<DrawingScale> scales = wish.Scale is { } asked ? [asked] : DrawingScale.Worth(size);
        foreach (var scale in scales)
        {
            var views = new SolidViews(part, scale.Factor, title.Projection, wish.Writing);
            var tables = SolidLists.All(part, views.Dimensions, wish.Writing);
            if (Layout.Best(wish.Papers, views.Bounds, tables, title) is not { } layout) continue;
            return new(layout.Draw(views.Marks, views.Bounds, tables, title, scale, wish.Writing.Units), views.Dimensions, scale, layout.Paper);
        }
        throw new RefusedException(Refusal.Of("scale", wish.Scale?.ToString(), "take a smaller scale or a larger sheet: with its dimensions the part does not fit"));
    }

    static double Size(SolidPart part)
    {
        var places = part.Extent.ToList();
        if (places.Count == 0) throw new RefusedException(Refusal.Of("part", part.Title, "at least one corner, edge or hole is needed before it is drawn"));
        if (places.Exists(p => !double.IsFinite(p.X + p.Y + p.Z))) throw new RefusedException(Refusal.Of("part", part.Title, "every place must be a finite number of mm"));
        double Span(Func<Vec3, double> of) => places.Max(of) - places.Min(of);
        return Math.Max(Span(p => p.X), Math.Max(Span(p => p.Y), Span(p => p.Z)));
    }
}
