using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>
/// A thin-walled section by its middle line: torsion (Bredt and Batho for cells, ∑ s t³/3 for every wall), shear centre and warping (Vlasov),
/// shear flow (Jourawski). One set of equations for open, closed and mixed sections: a ring of walls for each cell, none for an open one.
/// Holds for walls thin against the section's width; the error is of the order of thickness over width.
/// </summary>
sealed class ThinWalls
{
    readonly double[,] _slack;

    ThinWalls(Network net)
    {
        Net = net;
        var n = net.Rings.Length;
        _slack = new double[n, n];
        var swept = new double[n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
                for (var w = 0; w < net.Walls.Length; w++) _slack[i, j] += net.Rings[i][w] * net.Rings[j][w] * net.Walls[w].Slack;
            for (var w = 0; w < net.Walls.Length; w++) swept[i] += net.Rings[i][w] * net.Walls[w].Line.TwiceSwept(Vec2.Zero);
        }
        var flow = Cholesky.Solve(_slack, swept);
        Twist = Spread(flow);
        Torsion = swept.Select((a, i) => a * flow[i]).Sum() + net.Walls.Sum(w => w.Line.Length * w.Thickness * w.Thickness * w.Thickness / 3);
        (Centroid, Moments) = Middle();
        (ShearCentre, Warping) = Centre();
    }

    public static Parsed<ThinWalls> Of(Profile profile)
    {
        var net = Network.Of(profile);
        return net.Refusal is { } refusal ? refusal : new ThinWalls(net.Value);
    }

    public Network Net { get; }

    /// <summary>Shear flow along each wall for one unit of shear modulus times twist, mm².</summary>
    public ImmutableArray<double> Twist { get; }

    /// <summary>mm⁴.</summary>
    public double Torsion { get; }

    /// <summary>Torque over the greatest shear stress, mm³.</summary>
    public double TorsionModulus => Torsion / Net.Walls.Select((w, i) => w.Thickness > 0 ? Math.Abs(Twist[i]) / w.Thickness + w.Thickness : 0).Max();

    /// <summary>Of the middle lines about their centroid.</summary>
    public AreaMoments Moments { get; }

    public Vec2 Centroid { get; }

    public Vec2 ShearCentre { get; }

    public double Warping { get; }

    (Vec2, AreaMoments) Middle()
    {
        // About a place on the section: a far-off one loses no digits.
        var origin = Net.Walls[0].Line.A;
        double Sum(Func<Vec2, double> f) => Net.Walls.Sum(w => w.Sum(p => f(p - origin)));
        var raw = new AreaMoments(Sum(_ => 1), Sum(p => p.X), Sum(p => p.Y), Sum(p => p.X * p.X), Sum(p => p.Y * p.Y), Sum(p => p.X * p.Y));
        return (origin + raw.Centroid, raw.Moved(-raw.Centroid));
    }

    ImmutableArray<double> Spread(double[] flow) =>
        [.. Enumerable.Range(0, Net.Walls.Length).Select(w => Net.Rings.Select((r, i) => r[w] * flow[i]).Sum())];

    /// <summary>Warping per unit of twist at a share of a wall, mm², less that at its beginning; about a pole.</summary>
    double Warp(int wall, double share, Vec2 pole)
    {
        var w = Net.Walls[wall];
        return w.Line.To(share).TwiceSwept(pole) - Twist[wall] * w.Slack * share;
    }

    (Vec2 Centre, double Warping) Centre()
    {
        var atNode = WarpAtNodes(Centroid);
        double Sum(Func<Vec2, double, double> f) => Net.Walls.Select((w, i) => (w, i)).Where(x => x.w.Thickness > 0).Sum(x =>
            x.w.Thickness * x.w.Line.Length * Gauss.Sum(x.w.Line.Sweep, s => f(x.w.Line.At(s) - Centroid, atNode[x.w.From] + Warp(x.i, s, Centroid))));
        var (xw, yw, m) = (Sum((p, o) => p.X * o), Sum((p, o) => p.Y * o), Moments);
        // Warping about the shear centre has no moment about either axis.
        var det = m.YY * m.XX - m.XY * m.XY;
        // A lone flat strip bends about one axis only, and its shear centre is its middle.
        var centre = det <= 1e-12 * m.XX * m.XX + 1e-12 * m.YY * m.YY ? Vec2.Zero : new Vec2((yw * m.XX - xw * m.XY) / det, (yw * m.XY - xw * m.YY) / det);
        double About(Vec2 p, double o) => o - centre.X * p.Y + centre.Y * p.X;
        var mean = Sum(About) / m.Area;
        return (Centroid + centre, Sum((p, o) => (About(p, o) - mean) * (About(p, o) - mean)));
    }

    double[] WarpAtNodes(Vec2 pole)
    {
        var at = new double[Net.Nodes];
        foreach (var node in Net.Order.Skip(1))
        {
            var wall = Net.Walls[Net.Reached[node]];
            var whole = Warp(Net.Reached[node], 1, pole);
            at[node] = wall.To == node ? at[wall.From] + whole : at[wall.To] - whole;
        }
        return at;
    }

    /// <summary>Shear flow for a force through the shear centre: at each wall's beginning, N/mm, and the greatest stress anywhere, MPa.</summary>
    public (ImmutableArray<double> Start, double Stress) Shear(Vec2 force)
    {
        var m = Moments;
        var det = m.XX * m.YY - m.XY * m.XY;
        var rate = new Vec2((force.X * m.YY - force.Y * m.XY) / det, (force.Y * m.XX - force.X * m.XY) / det);
        // What the bending stress takes out of the flow up to a share of the wall.
        double Taken(Wall w, double share) => w.Thickness > 0 && share > 0 ? (w with { Line = w.Line.To(share) }).Sum(p => (p - Centroid).Dot(rate)) : 0;
        var start = FromTips(w => Taken(w, 1));
        var slip = new double[Net.Rings.Length];
        for (var w = 0; w < Net.Walls.Length; w++)
        {
            var wall = Net.Walls[w];
            if (wall.Thickness <= 0) continue;
            var along = wall.Line.Length / wall.Thickness * Gauss.Sum(wall.Line.Sweep, s => start[w] - Taken(wall, s));
            for (var k = 0; k < slip.Length; k++) slip[k] -= Net.Rings[k][w] * along;
        }
        var closing = Spread(Cholesky.Solve(_slack, slip));
        for (var w = 0; w < start.Length; w++) start[w] += closing[w];
        const int looks = 64;
        var stress = Net.Walls.Select((wall, w) => wall.Thickness <= 0 ? 0
            : Enumerable.Range(0, looks + 1).Max(k => Math.Abs(start[w] - Taken(wall, (double)k / looks))) / wall.Thickness).Max();
        return ([.. start], stress);
    }

    /// <summary>Flow at each wall's beginning with the closing walls cut open, so that nothing piles up at a node.</summary>
    double[] FromTips(Func<Wall, double> taken)
    {
        var start = new double[Net.Walls.Length];
        var lacking = new double[Net.Nodes];
        for (var w = 0; w < Net.Walls.Length; w++) lacking[Net.Walls[w].To] -= taken(Net.Walls[w]);
        foreach (var node in Net.Order.Skip(1).Reverse())
        {
            var w = Net.Reached[node];
            var wall = Net.Walls[w];
            // What is short at the node comes along its wall from the tree, or goes back along it.
            start[w] = wall.To == node ? -lacking[node] : lacking[node];
            lacking[wall.To == node ? wall.From : wall.To] += lacking[node];
        }
        return start;
    }
}
