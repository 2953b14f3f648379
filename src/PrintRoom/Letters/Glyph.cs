using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Letters;

/// <summary>One letter in tenths of the capital height: how far the pen reaches to the right, and what it draws.</summary>
public sealed record Glyph(double Width, ImmutableArray<Curve> Strokes)
{
    /// <summary>Top of the strokes; 0 for a space.</summary>
    public double Top { get; } = Strokes.IsEmpty ? 0 : Strokes.SelectMany(s => s.Points(0.05)).Max(p => p.Y);

    /// <summary>Drawn smaller, then raised.</summary>
    public Glyph Small(double scale, double raised) =>
        new(Width * scale, [.. Strokes.Select(s => s.Map(p => new Vec2(p.X * scale, p.Y * scale + raised)))]);

    public ImmutableArray<Curve> ShiftedBy(Vec2 by) => [.. Strokes.Select(s => s.Map(p => p + by))];

    public Glyph Under(ImmutableArray<Curve> accent, bool lifted) =>
        new(Width, [.. Strokes, .. new Glyph(0, accent).ShiftedBy(new(Width / 2, lifted && Top > 7.5 ? 3 : 0))]);
}
