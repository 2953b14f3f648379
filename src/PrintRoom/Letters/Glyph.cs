using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Letters;

/// <summary>One letter in tenths of the capital height: how far the pen reaches to the right, and what it draws.</summary>
public sealed class Glyph(double width, ImmutableArray<Curve> strokes)
{
    public double Width => width;

    public ImmutableArray<Curve> Strokes => strokes;

    /// <summary>Drawn smaller, then raised.</summary>
    public Glyph Small(double scale, double raised) =>
        new(width * scale, [.. strokes.Select(s => s.Map(p => new Vec2(p.X * scale, p.Y * scale + raised)))]);

    public ImmutableArray<Curve> ShiftedBy(Vec2 by) => [.. strokes.Select(s => s.Map(p => p + by))];

    /// <summary>With an accent over its middle; one that stands above is lifted over a tall letter.</summary>
    public Glyph Under(ImmutableArray<Curve> accent, bool standsAbove)
    {
        var lift = standsAbove && Top > SmallLetterTop + 0.5 ? 10 - SmallLetterTop : 0;
        return new(width, [.. strokes, .. new Glyph(0, accent).ShiftedBy(new(width / 2, lift))]);
    }

    const double SmallLetterTop = 7;

    double Top => strokes.SelectMany(s => s.Points(0.05)).Select(p => p.Y).DefaultIfEmpty(0).Max();
}
