using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>Which way views are set out round the first one.</summary>
public enum Projection { FirstAngle, ThirdAngle }

/// <summary>
/// The truncated cone of ISO 5456-2, small end to the left, and its view from the left: drawn to the right of it in first angle, to the left in third.
/// Small end h, large end and length 2h.
/// </summary>
static class ProjectionSymbol
{
    /// <summary>Width of the whole symbol for h = 1.</summary>
    public const double Width = 6.2;

    /// <param name="middle">Of the whole symbol, mm.</param>
    /// <param name="h">Diameter of the small end, mm.</param>
    public static void Draw(Board board, Vec2 middle, double h, Projection projection)
    {
        var side = projection == Projection.FirstAngle ? 1 : -1;
        var cone = middle - new Vec2(side * 1.6 * h, 0);
        var rings = middle + new Vec2(side * 1.6 * h, 0);
        board.Add(new PathMark(
            [cone + new Vec2(-h, h / 2), cone + new Vec2(h, h), cone + new Vec2(h, -h), cone + new Vec2(-h, -h / 2)],
            Closed: true, Filled: false, Layers.Frame, Stroke.Outline));
        board.Add(new CircleMark(rings, h / 2, Layers.Frame, Stroke.Outline));
        board.Add(new CircleMark(rings, h, Layers.Frame, Stroke.Outline));
        foreach (var (at, along) in new (Vec2, Vec2)[] { (cone, new(1, 0)), (rings, new(1, 0)), (rings, new(0, 1)) })
            board.Add(new LineMark(at - along * 1.35 * h, at + along * 1.35 * h, Layers.Frame, Stroke.Centre));
    }
}
