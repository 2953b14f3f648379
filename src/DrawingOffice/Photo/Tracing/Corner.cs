using WitnessMark.DrawingOffice.Photo.Seeing;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Tracing;

/// <summary>
/// The corner that a touch means: the point nearest to all edges about it, each pixel's change of light taken as a piece of an edge square to it and
/// weighed by its square (the normal equations of Förstner and Gülch, 1987, from memory). Where only one edge is near, the touch is drawn
/// square on to it; on even ground it stays.
/// </summary>
public static class Corner
{
    /// <summary>Sum of squared changes (light per px) across the strongest direction. Cause: noise of 2/255 makes 0.006, an edge a quarter of white deep 0.26.</summary>
    const double LeastEdge = 0.05;

    /// <summary>Of the weaker direction to the stronger. Cause: edges that turn by less than some 30° cross too vaguely; noise on one edge makes 0.02.</summary>
    const double LeastTurn = 0.08;

    /// <param name="reach">px; a corner further off was not meant.</param>
    public static Vec2 Near(Light light, Vec2 px, double reach = 6)
    {
        var at = px;
        for (var round = 0; round < 3; round++) at = Drawn(light, at, reach);
        return at.DistanceTo(px) <= reach ? at : px;
    }

    static Vec2 Drawn(Light light, Vec2 px, double reach)
    {
        var (sum, pull, far) = (default(Spread), Vec2.Zero, (int)Math.Ceiling(reach));
        for (var j = -far; j <= far; j++)
            for (var i = -far; i <= far; i++)
            {
                var off = new Vec2(i, j);
                if (off.Length > reach || !light.Holds(px + off, 2)) continue;
                var g = Change(light, px + off);
                sum += Spread.Along(g);
                pull += g * g.Dot(off);
            }
        var edges = sum.Ellipse;
        var (strong, weak) = (edges.Major * edges.Major, edges.Minor * edges.Minor);
        if (strong < LeastEdge) return px;
        Vec2 across = Vec2.Polar(edges.Turn), along = across.Left;
        var moved = across * (across.Dot(pull) / strong);
        return px + (weak < LeastTurn * strong ? moved : moved + along * (along.Dot(pull) / weak));
    }

    /// <summary>Of the light, per px to the right and down.</summary>
    static Vec2 Change(Light light, Vec2 p) => new Vec2(light.At(p.X + 1, p.Y) - light.At(p.X - 1, p.Y), light.At(p.X, p.Y + 1) - light.At(p.X, p.Y - 1)) / 2;
}
