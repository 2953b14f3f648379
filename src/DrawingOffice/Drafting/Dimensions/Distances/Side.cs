using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;

/// <summary>
/// The side of a view on which dimensions stand: under it (figures upright) or left of it (figures read from the right).
/// u runs along the side, v away from the view, both mm on paper.
/// </summary>
sealed record Side(Vec2 Origin, Vec2 Along, Vec2 Out, double Turn)
{
    public static Side Under(Box view) => new(new(0, view.Bottom), new(1, 0), new(0, -1), 0);

    public static Side LeftOf(Box view) => new(new(view.Left, 0), new(0, 1), new(-1, 0), Math.PI / 2);

    public bool Upright => Turn == 0;

    public Vec2 At(double u, double v) => Origin + Along * u + Out * v;

    public double U(Vec2 p) => (p - Origin).Dot(Along);

    public double V(Vec2 p) => (p - Origin).Dot(Out);

    /// <summary>Left end of the baseline of a figure that stands over the line at v, from u on: over is towards the view here, away from it there.</summary>
    public Vec2 Baseline(double u, double v) => At(u, Upright ? v - Over : v + Over);

    // Between a dimension line and the figure over it, mm.
    const double Over = 1.1;
}
