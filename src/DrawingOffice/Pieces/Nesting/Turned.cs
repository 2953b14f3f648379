using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Pieces.Nesting;

/// <summary>What a piece covers across in one row of the sheet, mm from its left.</summary>
readonly record struct Span(double From, double To);

/// <summary>
/// A piece in one turn as rows of equal height, each with what the outline, grown by half the gap, covers anywhere in that row. Exact across,
/// and up to a row's height too much up and down, so that pieces never overlap.
/// </summary>
/// <param name="Pose">Takes the piece to the frame of its rows: left and bottom at 0, grown edge included.</param>
/// <param name="Width">With the grown edge, mm.</param>
sealed record Turned(Pose2 Pose, double Width, ImmutableArray<ImmutableArray<Span>> Rows)
{
    // An outline that ends on a row's border does not reach into the next.
    const double Sliver = 1e-7;

    public static Turned Of(ImmutableArray<Vec2> outline, double turn, double grow, double row)
    {
        var x = Vec2.Polar(turn);
        // A quarter turn leaves no rounding behind.
        x = new(Math.Abs(x.X) < 1e-12 ? 0 : x.X, Math.Abs(x.Y) < 1e-12 ? 0 : x.Y);
        var turned = outline.Select(new Pose2(Vec2.Zero, x).Map).ToList();
        var shift = new Vec2(grow - turned.Min(p => p.X), grow - turned.Min(p => p.Y));
        Vec2[] points = [.. turned.Select(p => p + shift)];
        var (width, height) = (points.Max(p => p.X) + grow, points.Max(p => p.Y) + grow);
        var count = Math.Max(1, (int)Math.Ceiling(height / row - Sliver));
        return new(new(shift, x), width, [.. Enumerable.Range(0, count).Select(k => Covered(points, k * row - grow + Sliver, (k + 1) * row + grow - Sliver, grow))]);
    }

    /// <summary>The polygon's shadow across, of its part between two heights: the shadows of its sides there and of the metal cut at both heights.</summary>
    static ImmutableArray<Span> Covered(Vec2[] points, double low, double high, double grow)
    {
        var spans = new List<Span>();
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            var (a, b) = points[j].Y <= points[i].Y ? (points[j], points[i]) : (points[i], points[j]);
            if (b.Y < low || a.Y > high) continue;
            double At(double y) => b.Y - a.Y < Sliver ? a.X : a.X + (b.X - a.X) * (y - a.Y) / (b.Y - a.Y);
            var (p, q) = b.Y - a.Y < Sliver ? (a.X, b.X) : (At(Math.Max(low, a.Y)), At(Math.Min(high, b.Y)));
            spans.Add(new(Math.Min(p, q) - grow, Math.Max(p, q) + grow));
        }
        foreach (var y in new[] { low, high })
        {
            var cuts = new List<double>();
            for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
                if ((points[j].Y > y) != (points[i].Y > y)) cuts.Add(points[j].X + (points[i].X - points[j].X) * (y - points[j].Y) / (points[i].Y - points[j].Y));
            cuts.Sort();
            for (var k = 0; k + 1 < cuts.Count; k += 2) spans.Add(new(cuts[k] - grow, cuts[k + 1] + grow));
        }
        spans.Sort((s, t) => s.From.CompareTo(t.From));
        var merged = ImmutableArray.CreateBuilder<Span>();
        foreach (var s in spans)
        {
            if (merged.Count > 0 && s.From <= merged[^1].To + Sliver) merged[^1] = merged[^1] with { To = Math.Max(merged[^1].To, s.To) };
            else merged.Add(s);
        }
        return merged.ToImmutable();
    }
}
