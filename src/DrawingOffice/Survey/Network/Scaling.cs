using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// A first shape from distances alone: missing distances are taken as the shortest way through the measured ones, and classical
/// scaling (Torgerson 1952) lays the points out in the plane. Rough, and mirror-handed by chance; the adjustment does the rest.
/// </summary>
static class Scaling
{
    public static IEnumerable<(int Feature, Vec2 Place)> Of(Solver solver, double[] x)
    {
        var layout = solver.Layout;
        var features = Enumerable.Range(0, layout.Features.Length).Where(layout.HasPlace).ToArray();
        var at = features.Select((f, k) => (f, k)).ToDictionary(p => p.f, p => p.k);
        var ways = new List<(int To, double Length)>[features.Length];
        for (var k = 0; k < ways.Length; k++) ways[k] = [];
        foreach (var o in solver.Equations.Rows)
            if (Way(layout, o, x) is var (from, to, length) && at.TryGetValue(from, out var a) && at.TryGetValue(to, out var b))
            {
                ways[a].Add((b, length));
                ways[b].Add((a, length));
            }
        var n = features.Length;
        if (n < 2) return n == 0 ? [] : [(features[0], Vec2.Zero)];
        var square = new double[n, n];
        for (var k = 0; k < n; k++)
        {
            var shortest = Shortest(ways, k, layout.Lever);
            for (var j = 0; j < n; j++) square[k, j] = shortest[j] * shortest[j];
        }
        var places = Lay(square);
        return features.Select((f, k) => (f, places[k]));
    }

    /// <summary>The centre distance that an equation speaks of, as far as it does.</summary>
    static (int From, int To, double Length)? Way(Layout layout, in Observed o, double[] x)
    {
        switch (o.Kind)
        {
            case ReadingKind.CentreDistance:
                return (o.From, o.To, o.Value);
            case ReadingKind.OutsideOverHoles:
                return (o.From, o.To, Math.Max(1e-6, o.Value - layout.Radius(o.From, x) - layout.Radius(o.To, x)));
            case ReadingKind.InsideBetweenHoles:
                return (o.From, o.To, o.Value + layout.Radius(o.From, x) + layout.Radius(o.To, x));
            case ReadingKind.LengthAlongEdge or ReadingKind.Chord:
                var (a, b) = layout.Corners(o.From);
                return (a, b, o.Value);
            default:
                return null;
        }
    }

    /// <summary>Dijkstra; what cannot be reached is put a part's length away.</summary>
    static double[] Shortest(List<(int To, double Length)>[] ways, int from, double unreached)
    {
        var distance = new double[ways.Length];
        Array.Fill(distance, double.PositiveInfinity);
        distance[from] = 0;
        var queue = new PriorityQueue<int, double>();
        queue.Enqueue(from, 0);
        while (queue.TryDequeue(out var here, out var d))
        {
            if (d > distance[here]) continue;
            foreach (var (to, length) in ways[here])
                if (d + length < distance[to]) queue.Enqueue(to, distance[to] = d + length);
        }
        for (var k = 0; k < distance.Length; k++)
            if (double.IsInfinity(distance[k])) distance[k] = unreached;
        return distance;
    }

    /// <summary>The two largest components of −½ J D² J, by subspace iteration.</summary>
    static Vec2[] Lay(double[,] square)
    {
        var n = square.GetLength(0);
        var mean = new double[n];
        for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++) mean[i] += square[i, j] / n;
        var all = mean.Average();
        var chance = new Chance(7);
        double[][] z = [.. Enumerable.Range(0, Math.Min(4, n)).Select(_ => Enumerable.Range(0, n).Select(_ => chance.Normal()).ToArray())];
        for (var round = 0; round < 60; round++) z = Orthonormal.Of(z.Select(Times));
        var small = new double[z.Length, z.Length];
        var images = z.Select(Times).ToArray();
        for (var a = 0; a < z.Length; a++)
            for (var b = 0; b < z.Length; b++) small[a, b] = Orthonormal.Dot(z[a], images[b]);
        var (values, vectors) = SymmetricEigen.Of(small);
        double Component(int i, int back)
        {
            var e = values.Length - 1 - back;
            if (e < 0) return 0;
            double sum = 0;
            for (var a = 0; a < z.Length; a++) sum += vectors[a, e] * z[a][i];
            return sum * Math.Sqrt(Math.Max(0, values[e]));
        }
        return [.. Enumerable.Range(0, n).Select(i => new Vec2(Component(i, 0), Component(i, 1)))];

        double[] Times(double[] v)
        {
            var y = new double[n];
            for (var i = 0; i < n; i++)
                for (var j = 0; j < n; j++) y[i] -= 0.5 * (square[i, j] - mean[i] - mean[j] + all) * v[j];
            return y;
        }
    }
}
