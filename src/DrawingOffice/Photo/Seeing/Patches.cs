using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Photo.Seeing;

/// <summary>Dark pixels that hang together, as the rows they fill.</summary>
/// <param name="Area">Pixels.</param>
/// <param name="Hull">px, anticlockwise where y is up (so clockwise as seen).</param>
readonly record struct Patch(int Area, System.Collections.Immutable.ImmutableArray<Vec2> Hull);

/// <summary>Dark patches of a picture: darker than a share of the mean round about, so that a shadow over half the sheet does no harm.</summary>
static class Patches
{
    /// <summary>Of the mean light round about. Cause: printed black sends back a tenth of what paper does, and a quarter of the mean's own window is black.</summary>
    const double Share = 0.55;

    /// <summary>px; a smaller patch shows no side.</summary>
    const int LeastArea = 30;

    /// <summary>Of the picture; a mark that fills more leaves no room for the frame.</summary>
    const double MostArea = 0.02;

    readonly record struct Run(int Row, int From, int To, int Patch);

    /// <param name="window">Side of the square over which the mean is taken, px.</param>
    public static List<Patch> Of(Light light, int window)
    {
        var runs = new List<Run>();
        var parent = new List<int>();
        int Root(int k)
        {
            while (parent[k] != k) k = parent[k] = parent[parent[k]];
            return k;
        }
        var (above, here) = (0, 0);
        foreach (var (row, from, to) in Dark(light, window))
        {
            if (runs.Count == 0 || runs[^1].Row != row)
            {
                above = runs.Count > 0 && runs[^1].Row == row - 1 ? here : runs.Count;
                here = runs.Count;
            }
            var patch = -1;
            // Runs of the row above that touch, corners included; those left of this run touch no later one either.
            while (above < here && runs[above].To < from) above++;
            for (var k = above; k < here && runs[k].From <= to; k++)
            {
                var root = Root(runs[k].Patch);
                if (patch < 0) patch = root;
                else if (patch != root) parent[root] = patch;
            }
            if (patch < 0)
            {
                patch = parent.Count;
                parent.Add(patch);
            }
            runs.Add(new(row, from, to, patch));
        }
        return Gathered(light, runs, Root);
    }

    static List<Patch> Gathered(Light light, List<Run> runs, Func<int, int> root)
    {
        var (area, edge, members) = (new Dictionary<int, int>(), new HashSet<int>(), new Dictionary<int, List<Run>>());
        foreach (var run in runs)
        {
            var r = root(run.Patch);
            area[r] = area.GetValueOrDefault(r) + run.To - run.From;
            if (run.Row == 0 || run.Row == light.Height - 1 || run.From == 0 || run.To == light.Width) edge.Add(r);
        }
        var most = MostArea * light.Width * light.Height;
        foreach (var run in runs)
        {
            var r = root(run.Patch);
            if (area[r] < LeastArea || area[r] > most || edge.Contains(r)) continue;
            if (!members.TryGetValue(r, out var list)) members[r] = list = [];
            list.Add(run);
        }
        return [.. members.Select(m => new Patch(area[m.Key], Hull.Of(m.Value.SelectMany(Corners))))];
    }

    static IEnumerable<Vec2> Corners(Run run) => [new(run.From, run.Row), new(run.To, run.Row), new(run.From, run.Row + 1), new(run.To, run.Row + 1)];

    /// <summary>Runs of dark pixels row by row, From up to but not To.</summary>
    static IEnumerable<(int Row, int From, int To)> Dark(Light light, int window)
    {
        var (w, h, half) = (light.Width, light.Height, window / 2);
        // Sums over columns of the window's rows, moved down row by row.
        var columns = new double[w];
        for (var y = 0; y < Math.Min(h, half); y++) Add(light, columns, y, 1);
        for (var y = 0; y < h; y++)
        {
            if (y + half < h) Add(light, columns, y + half, 1);
            if (y - half - 1 >= 0) Add(light, columns, y - half - 1, -1);
            var rows = Math.Min(h - 1, y + half) - Math.Max(0, y - half) + 1;
            double sum = 0;
            for (var x = 0; x < Math.Min(w, half); x++) sum += columns[x];
            var from = -1;
            for (var x = 0; x < w; x++)
            {
                if (x + half < w) sum += columns[x + half];
                if (x - half - 1 >= 0) sum -= columns[x - half - 1];
                var count = rows * (Math.Min(w - 1, x + half) - Math.Max(0, x - half) + 1);
                var dark = light.Values[y * w + x] * count < Share * sum;
                if (dark && from < 0) from = x;
                if (dark || from < 0) continue;
                yield return (y, from, x);
                from = -1;
            }
            if (from >= 0) yield return (y, from, w);
        }
    }

    static void Add(Light light, double[] columns, int row, double sign)
    {
        var values = light.Values.Slice(row * light.Width, light.Width);
        for (var x = 0; x < columns.Length; x++) columns[x] += sign * values[x];
    }
}
