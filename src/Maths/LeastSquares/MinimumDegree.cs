using System.Numerics;

namespace WitnessMark.Maths.LeastSquares;

/// <summary>
/// Elimination order by exact minimum degree on the graph of blocks (all unknowns of one feature are one block).
/// The elimination graph is kept as one bit row per block: n²/8 bytes, quick and simple to several thousand blocks.
/// </summary>
static class MinimumDegree
{
    /// <param name="cliques">Blocks that meet in one row.</param>
    /// <returns>Blocks in the order of elimination.</returns>
    public static int[] Order(int blocks, IEnumerable<int[]> cliques)
    {
        var words = (blocks + 63) / 64;
        var graph = new ulong[blocks][];
        for (var b = 0; b < blocks; b++) graph[b] = new ulong[words];
        foreach (var clique in cliques)
            foreach (var a in clique)
                foreach (var b in clique)
                    if (a != b) graph[a][b >> 6] |= 1UL << (b & 63);

        var degree = graph.Select(Count).ToArray();
        var done = new bool[blocks];
        var order = new int[blocks];
        for (var step = 0; step < blocks; step++)
        {
            var pivot = -1;
            for (var b = 0; b < blocks; b++)
                if (!done[b] && (pivot < 0 || degree[b] < degree[pivot])) pivot = b;
            order[step] = pivot;
            done[pivot] = true;
            Eliminate(pivot, graph, degree);
        }
        return order;
    }

    /// <summary>The neighbours of the pivot become neighbours of each other, and the pivot leaves the graph.</summary>
    static void Eliminate(int pivot, ulong[][] graph, int[] degree)
    {
        var neighbours = graph[pivot];
        for (var w = 0; w < neighbours.Length; w++)
            for (var bits = neighbours[w]; bits != 0; bits &= bits - 1)
            {
                var b = (w << 6) + BitOperations.TrailingZeroCount(bits);
                var row = graph[b];
                for (var k = 0; k < row.Length; k++) row[k] |= neighbours[k];
                row[b >> 6] &= ~(1UL << (b & 63));
                row[pivot >> 6] &= ~(1UL << (pivot & 63));
                degree[b] = Count(row);
            }
    }

    static int Count(ulong[] row)
    {
        var count = 0;
        foreach (var w in row) count += BitOperations.PopCount(w);
        return count;
    }
}
