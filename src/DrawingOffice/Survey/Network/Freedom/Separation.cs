namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// Pairs of features whose removal splits the survey: what hangs on such a pair alone may be turned over about the line through
/// it. Found as the articulation points of the graph with each feature taken out in turn (Hopcroft and Tarjan 1973).
/// </summary>
sealed class Separation
{
    readonly List<int>[] _ties;

    /// <param name="cliques">Features that stand in one equation.</param>
    public Separation(int features, IEnumerable<int[]> cliques)
    {
        var sets = new HashSet<int>[features];
        for (var i = 0; i < features; i++) sets[i] = [];
        foreach (var clique in cliques)
            foreach (var a in clique)
                foreach (var b in clique)
                    if (a != b) sets[a].Add(b);
        _ties = [.. sets.Select(s => s.ToList())];
    }

    /// <summary>Each splitting pair with the smaller parts that hang on it.</summary>
    public IEnumerable<(int A, int B, int[] Part)> Parts()
    {
        for (var a = 0; a < _ties.Length; a++)
            foreach (var b in Articulations(a).Where(b => b > a))
            {
                var parts = Components(a, b).OrderByDescending(c => c.Length).ToList();
                foreach (var part in parts.Skip(1)) yield return (a, b, part);
            }
    }

    /// <summary>The parts that are left when some features are taken out.</summary>
    public IEnumerable<int[]> Without(params int[] features) => Components(features);

    /// <summary>Each splitting three with the smaller parts that hang on it.</summary>
    public IEnumerable<(int[] Three, int[] Part)> OnThree()
    {
        for (var a = 0; a < _ties.Length; a++)
            for (var b = a + 1; b < _ties.Length; b++)
                foreach (var c in Articulations(a, b).Where(c => c > b))
                    foreach (var part in Components(a, b, c).OrderByDescending(p => p.Length).Skip(1))
                        yield return ([a, b, c], part);
    }

    IEnumerable<int> Articulations(params int[] without)
    {
        var n = _ties.Length;
        var (order, low, found) = (new int[n], new int[n], new HashSet<int>());
        var clock = 0;
        var stack = new Stack<(int Node, int Parent, int Next)>();
        for (var root = 0; root < n; root++)
        {
            if (without.Contains(root) || order[root] > 0) continue;
            var children = 0;
            order[root] = low[root] = ++clock;
            stack.Push((root, -1, 0));
            while (stack.TryPop(out var top))
            {
                var (node, parent, next) = top;
                if (next < _ties[node].Count)
                {
                    stack.Push((node, parent, next + 1));
                    var to = _ties[node][next];
                    if (to == parent || without.Contains(to)) continue;
                    if (order[to] > 0)
                    {
                        low[node] = Math.Min(low[node], order[to]);
                        continue;
                    }
                    order[to] = low[to] = ++clock;
                    if (node == root) children++;
                    stack.Push((to, node, 0));
                }
                else if (parent >= 0)
                {
                    low[parent] = Math.Min(low[parent], low[node]);
                    if (parent != root && low[node] >= order[parent]) found.Add(parent);
                }
            }
            if (children > 1) found.Add(root);
        }
        return found;
    }

    IEnumerable<int[]> Components(params int[] without)
    {
        var seen = new bool[_ties.Length];
        foreach (var f in without) seen[f] = true;
        for (var start = 0; start < seen.Length; start++)
        {
            if (seen[start]) continue;
            var part = new List<int> { start };
            seen[start] = true;
            for (var i = 0; i < part.Count; i++)
                foreach (var to in _ties[part[i]])
                    if (!seen[to])
                    {
                        seen[to] = true;
                        part.Add(to);
                    }
            yield return [.. part];
        }
    }
}
