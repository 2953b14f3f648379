using System.Numerics;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>Jobs that could begin, apart by what they need, each set as bits with the first (most wanted) job found in a step or two.</summary>
sealed class ReadyJobs
{
    readonly int _words, _tops;
    readonly ulong[] _bits, _top;
    readonly int[] _count;
    readonly byte[] _classOf, _needs, _place;

    public ReadyJobs(JobLine[] lines)
    {
        var classes = lines.Select(l => (l.Needs, l.Place)).Distinct().ToArray();
        _classOf = [.. lines.Select(l => (byte)Array.IndexOf(classes, (l.Needs, l.Place)))];
        (_needs, _place) = ([.. classes.Select(c => c.Needs)], [.. classes.Select(c => c.Place)]);
        _words = (lines.Length + 63) / 64;
        _tops = (_words + 63) / 64;
        (_bits, _top, _count) = (new ulong[classes.Length * _words], new ulong[classes.Length * _tops], new int[classes.Length]);
    }

    public void Clear()
    {
        Array.Clear(_bits);
        Array.Clear(_top);
        Array.Clear(_count);
    }

    public void Add(int job)
    {
        int c = _classOf[job], w = job >> 6;
        _bits[c * _words + w] |= 1UL << job;
        _top[c * _tops + (w >> 6)] |= 1UL << w;
        _count[c]++;
    }

    public void Remove(int job)
    {
        int c = _classOf[job], w = job >> 6;
        if ((_bits[c * _words + w] &= ~(1UL << job)) == 0) _top[c * _tops + (w >> 6)] &= ~(1UL << w);
        _count[c]--;
    }

    /// <summary>The most wanted job that these hours suit and that has a place; −1 for none.</summary>
    /// <param name="offers">Bits of <see cref="Needed"/> that the hours offer.</param>
    /// <param name="free">Places free, by <see cref="WorkPlace"/>.</param>
    public int First(byte offers, int[] free)
    {
        var best = int.MaxValue;
        for (var c = 0; c < _count.Length; c++)
            if (_count[c] > 0 && (_needs[c] & ~offers) == 0 && free[_place[c]] > 0)
                best = Math.Min(best, FirstOf(c));
        return best == int.MaxValue ? -1 : best;
    }

    public bool Any()
    {
        foreach (var n in _count)
            if (n > 0) return true;
        return false;
    }

    int FirstOf(int c)
    {
        for (var t = 0; ; t++)
            if (_top[c * _tops + t] is not 0 and var top)
            {
                var w = t * 64 + BitOperations.TrailingZeroCount(top);
                return w * 64 + BitOperations.TrailingZeroCount(_bits[c * _words + w]);
            }
    }
}
