using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo.Seeing;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Tracing;

/// <summary>
/// The way along an edge between two clicks: the shortest path over a net of pixels where a step costs little along strong changes of light
/// and much across even ground (Dijkstra), within a window about the two clicks. For showing and as a start; <see cref="Outline"/>
/// finds the edge itself to a fraction of a pixel.
/// </summary>
public static class Snap
{
    /// <summary>Nodes of the net. Cause: a finger waits no longer than a tenth of a second, in a browser too; longer stretches take a coarser net.</summary>
    const int Most = 16_000;

    /// <summary>Cost of a step over even ground over that of one along the strongest edge.</summary>
    const double Even = 15;

    /// <summary>The strongest edge within <paramref name="reach"/> px of a click, nearer ones before farther; the click itself where there is none.</summary>
    public static Vec2 Point(Light light, Vec2 px, double reach = 8)
    {
        var (best, most, middle) = (px, 0.01, (int)Math.Ceiling(reach));
        for (var j = -middle; j <= middle; j++)
            for (var i = -middle; i <= middle; i++)
            {
                var p = px + new Vec2(i, j);
                var far = Math.Sqrt(i * i + j * j) / reach;
                if (far > 1 || !light.Holds(p, 2)) continue;
                var strength = Slope(light, p, 1) * (1 - 0.5 * far);
                if (strength > most) (best, most) = (p, strength);
            }
        return best;
    }

    /// <summary>From one click to the next along the strongest edge, px, both ends with it.</summary>
    public static ImmutableArray<Vec2> Path(Light light, Vec2 from, Vec2 to, CancellationToken stop = default)
    {
        var margin = Math.Max(12, 0.25 * from.DistanceTo(to));
        var low = new Vec2(Math.Max(1, Math.Min(from.X, to.X) - margin), Math.Max(1, Math.Min(from.Y, to.Y) - margin));
        var high = new Vec2(Math.Min(light.Width - 1, Math.Max(from.X, to.X) + margin), Math.Min(light.Height - 1, Math.Max(from.Y, to.Y) + margin));
        if (!(high.X - low.X > 2 && high.Y - low.Y > 2)) return [from, to];
        var spacing = Math.Max(1, Math.Sqrt((high.X - low.X) * (high.Y - low.Y) / Most));
        var (w, h) = ((int)((high.X - low.X) / spacing) + 1, (int)((high.Y - low.Y) / spacing) + 1);
        var cost = Costs(light, low, spacing, w, h);
        int Node(Vec2 p) => Math.Clamp((int)Math.Round((p.Y - low.Y) / spacing), 0, h - 1) * w + Math.Clamp((int)Math.Round((p.X - low.X) / spacing), 0, w - 1);
        var (start, end) = (Node(from), Node(to));
        var back = Shortest(cost, w, h, start, end, stop);
        var way = new List<Vec2> { to };
        for (var k = back[end]; k >= 0 && k != start; k = back[k]) way.Add(low + new Vec2(k % w, k / w) * spacing);
        way.Add(from);
        way.Reverse();
        return [.. way];
    }

    /// <summary>Cost of a node: 1 on the strongest edges of the window, <see cref="Even"/> on even ground.</summary>
    static float[] Costs(Light light, Vec2 low, double spacing, int w, int h)
    {
        var slope = new double[w * h];
        for (var j = 0; j < h; j++)
            for (var i = 0; i < w; i++) slope[j * w + i] = Slope(light, low + new Vec2(i, j) * spacing, Math.Max(1, 0.7 * spacing));
        var strong = Math.Max(0.005, slope.Order().ElementAt((int)(0.97 * (slope.Length - 1))));
        return [.. slope.Select(s => (float)(1 + (Even - 1) * Math.Pow(1 - Math.Min(1, s / strong), 2)))];
    }

    static int[] Shortest(float[] cost, int w, int h, int start, int end, CancellationToken stop)
    {
        var (far, back, done) = (new float[cost.Length], new int[cost.Length], new bool[cost.Length]);
        Array.Fill(far, float.PositiveInfinity);
        Array.Fill(back, -1);
        var queue = new PriorityQueue<int, float>();
        far[start] = 0;
        queue.Enqueue(start, 0);
        while (queue.TryDequeue(out var k, out _) && k != end)
        {
            if (done[k]) continue;
            done[k] = true;
            stop.ThrowIfCancellationRequested();
            var (x, y) = (k % w, k / w);
            for (var b = Math.Max(0, y - 1); b <= Math.Min(h - 1, y + 1); b++)
                for (var a = Math.Max(0, x - 1); a <= Math.Min(w - 1, x + 1); a++)
                {
                    var n = b * w + a;
                    if (done[n]) continue;
                    var reached = far[k] + (cost[k] + cost[n]) / 2 * (a != x && b != y ? 1.41421f : 1);
                    if (!(reached < far[n])) continue;
                    (far[n], back[n]) = (reached, k);
                    queue.Enqueue(n, reached);
                }
        }
        return back;
    }

    /// <summary>How fast the light changes, per px.</summary>
    static double Slope(Light light, Vec2 p, double reach)
    {
        var x = light.At(p.X + reach, p.Y) - light.At(p.X - reach, p.Y);
        var y = light.At(p.X, p.Y + reach) - light.At(p.X, p.Y - reach);
        return Math.Sqrt(x * x + y * y) / (2 * reach);
    }
}
