using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Order.Search;

/// <summary>How new lists are made. Every list keeps each activity behind its predecessors.</summary>
sealed class Breeding(Web web, Chance chance)
{
    readonly bool[] _taken = new bool[web.Count];
    readonly int[] _at = new int[web.Count];
    readonly int[] _open = new int[web.Count];
    readonly int[] _ready = new int[web.Count];

    /// <summary>
    /// A list by latest start with regret: of two or three ready activities drawn by chance the most urgent goes first.
    /// </summary>
    public void Sample(int[] list, int draws)
    {
        var ready = 0;
        for (var i = 0; i < web.Count; i++)
            if ((_open[i] = web.Before[i].Length) == 0) _ready[ready++] = i;
        for (var at = 0; at < list.Length; at++)
        {
            var pick = chance.Below(ready);
            for (var draw = 1; draw < draws; draw++)
            {
                var other = chance.Below(ready);
                if (Urgency(_ready[other]) > Urgency(_ready[pick])) pick = other;
            }
            var next = list[at] = _ready[pick];
            _ready[pick] = _ready[--ready];
            foreach (var s in web.After[next])
                if (--_open[s] == 0) _ready[ready++] = s;
        }
    }

    /// <summary>Two cuts: the mother's beginning and end, between them what the father does first (Hartmann, Naval Research Logistics 45 (1998) 733-750).</summary>
    public void Cross(Member mother, Member father, Member child)
    {
        var (low, high) = (chance.Below(web.Count + 1), chance.Below(web.Count + 1));
        if (low > high) (low, high) = (high, low);
        Array.Clear(_taken);
        var at = 0;
        at = Fill(mother.List, child.List, at, low);
        at = Fill(father.List, child.List, at, high);
        Fill(mother.List, child.List, at, web.Count);
        for (var i = 0; i < web.Count; i++) child.Held[i] = (chance.NextBits() & 1) == 0 ? mother.Held[i] : father.Held[i];
    }

    /// <summary>Moves a few activities to another place between their neighbours in precedence.</summary>
    public void Mutate(int[] list, int moves)
    {
        for (var at = 0; at < list.Length; at++) _at[list[at]] = at;
        for (var move = 0; move < moves; move++)
        {
            var i = chance.Below(web.Count);
            var (low, high) = (0, web.Count - 1);
            foreach (var p in web.Before[i]) low = Math.Max(low, _at[p] + 1);
            foreach (var s in web.After[i]) high = Math.Min(high, _at[s] - 1);
            Shift(list, _at[i], low + chance.Below(high - low + 1));
        }
    }

    void Shift(int[] list, int from, int to)
    {
        var moved = list[from];
        for (var step = Math.Sign(to - from); from != to; from += step)
        {
            list[from] = list[from + step];
            _at[list[from]] = from;
        }
        list[to] = moved;
        _at[moved] = to;
    }

    int Fill(int[] from, int[] to, int at, int until)
    {
        for (var k = 0; k < from.Length && at < until; k++)
            if (!_taken[from[k]])
            {
                _taken[from[k]] = true;
                to[at++] = from[k];
            }
        return at;
    }

    int Urgency(int i) => web.Tails[i] + web.Durations[i];
}
