namespace WitnessMark.PlanningOffice.Order.Search;

/// <summary>
/// Places activities on a profile of what is free. Four resources stand side by side in one word, 16 bits each, the top
/// bit a guard: a need fits when no guard is borrowed. Nothing is allocated after construction.
/// </summary>
sealed class Decoder
{
    const ulong Guards = 0x8000_8000_8000_8000;

    readonly ulong[] _free, _need, _capacity;
    readonly int[] _order;
    readonly long[] _keys;
    readonly int _words;
    int _touched;

    public Decoder(Web web)
    {
        Web = web;
        _words = Math.Max(1, (web.Capacities.Length + 3) / 4);
        _capacity = Packed(web.Capacities);
        _need = [.. Enumerable.Range(0, web.Count).SelectMany(i => Packed(web.Needs[i]))];
        _free = new ulong[(web.Horizon + 1) * _words];
        _order = new int[web.Count];
        _keys = new long[web.Count];
        _touched = web.Horizon + 1;
    }

    public Web Web { get; }

    /// <summary>Serial schedule generation: each activity of the list at the earliest slot it fits. Predecessors come first.</summary>
    /// <param name="floors">The earliest slot of each activity beyond its release; empty for none.</param>
    /// <returns>The makespan.</returns>
    public int Serial(ReadOnlySpan<int> list, Span<int> starts, ReadOnlySpan<int> floors = default)
    {
        Clear();
        var end = 0;
        foreach (var i in list)
        {
            var from = floors.IsEmpty ? Web.Releases[i] : Math.Max(Web.Releases[i], floors[i]);
            foreach (var p in Web.Before[i]) from = Math.Max(from, starts[p] + Web.Durations[p]);
            starts[i] = Earliest(i, from);
            Take(i, starts[i]);
            end = Math.Max(end, starts[i] + Web.Durations[i]);
        }
        return end;
    }

    /// <summary>
    /// Double justification (Valls, Ballestín, Quintanilla, European Journal of Operational Research 165 (2005) 375-386):
    /// all as late as the makespan allows, then all as early as can be. Never longer than before.
    /// </summary>
    public int Justify(Span<int> starts, int makespan)
    {
        Latest(starts, makespan);
        return Serial(ByStart(starts), starts);
    }

    /// <summary>Places in order of start; at equal starts each follows its predecessors.</summary>
    public ReadOnlySpan<int> ByStart(ReadOnlySpan<int> starts)
    {
        for (var i = 0; i < _order.Length; i++) (_order[i], _keys[i]) = (i, ((long)starts[i] << 32) | (uint)Web.Position[i]);
        Array.Sort(_keys, _order);
        return _order;
    }

    void Latest(Span<int> starts, int makespan)
    {
        for (var i = 0; i < _order.Length; i++) (_order[i], _keys[i]) = (i, -(((long)(starts[i] + Web.Durations[i]) << 32) | (uint)Web.Position[i]));
        Array.Sort(_keys, _order);
        Clear();
        foreach (var i in _order)
        {
            var until = makespan;
            foreach (var s in Web.After[i]) until = Math.Min(until, starts[s]);
            starts[i] = LatestFit(i, until - Web.Durations[i]);
            Take(i, starts[i]);
        }
    }

    int Earliest(int i, int from)
    {
        var duration = Web.Durations[i];
        for (var (start, slot) = (from, from); ; slot++)
        {
            if (slot - start == duration) return start;
            if (!Fits(i, slot)) start = slot + 1;
        }
    }

    int LatestFit(int i, int from)
    {
        var duration = Web.Durations[i];
        for (var (start, slot) = (from, from + duration - 1); ; slot--)
        {
            if (slot < start) return start;
            if (!Fits(i, slot)) start = slot - duration;
        }
    }

    bool Fits(int i, int slot)
    {
        for (var w = 0; w < _words; w++)
            if ((((_free[slot * _words + w] | Guards) - _need[i * _words + w]) & Guards) != Guards) return false;
        return true;
    }

    void Take(int i, int start)
    {
        var end = start + Web.Durations[i];
        for (var slot = start; slot < end; slot++)
            for (var w = 0; w < _words; w++) _free[slot * _words + w] -= _need[i * _words + w];
        _touched = Math.Max(_touched, end);
    }

    void Clear()
    {
        if (_words == 1) _free.AsSpan(0, _touched).Fill(_capacity[0]);
        else for (var k = 0; k < _touched * _words; k++) _free[k] = _capacity[k % _words];
        _touched = 0;
    }

    ulong[] Packed(ReadOnlySpan<int> amounts)
    {
        var packed = new ulong[_words];
        for (var r = 0; r < amounts.Length; r++) packed[r / 4] |= (ulong)amounts[r] << (16 * (r % 4));
        return packed;
    }
}
