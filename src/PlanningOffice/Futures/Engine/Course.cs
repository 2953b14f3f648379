namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// One future, day by day. On each day money comes in and what is due is paid, lead times end, then the hours by daylight and
/// those of the evening are worked: on a job begun before if the hours suit it, else on the first of the priority list that is
/// ready, suits the hours and has its place. The person does one job at a time and may leave off at any point; a bay or bench
/// is taken from a job's beginning until what follows it is over. What arrives or cures during a day is there the next
/// morning. One worker's state, used over and over without allocating.
/// </summary>
public sealed class Course
{
    /// <summary>Hours left over by rounding that count as done: a hundredth of a second.</summary>
    const float Done = 3e-6f;

    readonly Model _model;
    readonly Draws _draws;
    readonly ReadyJobs _ready;
    readonly PurseCourse _purse;
    readonly int[] _waits, _head, _next, _cause, _releasedBy, _free = new int[3], _freedBy = new int[3];
    readonly float[] _start, _end, _left, _readyAt, _freedAt = new float[3];
    readonly bool[] _ordered, _paid;
    readonly int[] _begun;
    readonly long[] _critical;
    int _begunCount, _over, _day, _lastWorked, _month;
    float _now, _lastWork;
    double _hours;

    internal Course(Model model)
    {
        _model = model;
        var (n, leads) = (model.Lines.Length, model.Leads.Length);
        (_draws, _ready, _purse) = (new(model), new(model.Lines), new(model.Income, leads + n));
        (_waits, _cause, _releasedBy, _begun, _critical) = (new int[n], new int[n], new int[n], new int[n], new long[n]);
        (_start, _end, _left, _readyAt, _paid) = (new float[n], new float[n], new float[n], new float[n], new bool[n]);
        (_head, _next, _ordered) = (new int[model.Horizon + 2], new int[leads], new bool[leads]);
    }

    internal float Finish { get; private set; }

    internal float[] Started => _start;

    internal ReadOnlySpan<float> Ended => _end;

    internal ReadOnlySpan<long> Critical => _critical;

    internal PurseCourse Purse => _purse;

    internal double Hours => _hours;

    internal Draws Drawn => _draws;

    internal void Run(int future, Span<float> balance = default)
    {
        _draws.Draw(future);
        Reset();
        for (_day = 0; _day <= _model.Horizon && _over < _waits.Length; _day++)
        {
            _now = _day;
            Income(future, balance);
            while (_purse.Settle() is >= 0 and var node) Paid(node);
            Events();
            var light = Today(_draws.Own.CumulativeNoisy);
            Work(light, Offers(Needed.Daylight), 0);
            Work(Today(_draws.Own.Cumulative) - light, Offers(0), 1);
        }
        Finish = 0;
        var last = 0;
        for (var j = 0; j < _end.Length; j++)
            if (_end[j] > Finish) (Finish, last) = (_end[j], j);
        Trace(last);
        for (; _day <= _model.Horizon && _month < balance.Length; _day++) Income(future, balance);
    }

    void Reset()
    {
        _model.Waits.CopyTo(_waits, 0);
        _draws.Hours.CopyTo(_left, 0);
        Array.Fill(_head, -1);
        Array.Fill(_start, _model.Horizon);
        Array.Fill(_end, _model.Horizon);
        Array.Clear(_ordered);
        Array.Clear(_paid);
        _ready.Clear();
        _purse.Reset();
        (_free[0], _free[1], _free[2]) = (int.MaxValue, _model.Input.Means.Benches, _model.Input.Means.Bays);
        Array.Fill(_freedAt, -1);
        (_begunCount, _over, _day, _lastWorked, _month, _now, _lastWork, _hours) = (0, 0, 0, -1, 0, 0, 0, 0);
        foreach (var h in _draws.Hours) _hours += h;
        for (var k = 0; k < _next.Length; k++)
            if (_model.Leads[k] is { Before: true } lead && lead.Order <= _model.Horizon) Put(k, Math.Max(0, lead.Order));
        for (var j = 0; j < _waits.Length; j++)
            if (_waits[j] == 0) Ready(j, -1);
    }

    void Income(int future, Span<float> balance)
    {
        var income = _model.Income;
        _purse.Take(income.Once[_day]);
        if (_month >= income.MonthStart.Length || income.MonthStart[_month] != _day) return;
        if (_month < balance.Length) balance[_month] = (float)_purse.Balance;
        _purse.Take(income.EachMonth.Draw(Keyed.Upper(Keyed.Bits(income.Key + (ulong)_month, future))));
        _month++;
    }

    float Today(ReadOnlySpan<double> cumulative) => (float)(_day == 0 ? cumulative[0] : cumulative[_day] - cumulative[_day - 1]);

    byte Offers(byte light) =>
        (byte)(light | (_draws.Own.Dry[_day] ? Needed.Dry : 0) | (_draws.Own.Helper[_day] ? Needed.Helper : 0));

    void Work(float hours, byte offers, int half)
    {
        if (hours <= Done) return;
        var left = hours;
        while (left > 0 && Choose(offers) is >= 0 and var j)
        {
            var done = Math.Min(_left[j], left);
            _left[j] -= done;
            left -= done;
            _now = _day + (half + 1 - left / hours) / 2;
            (_lastWorked, _lastWork) = (j, _now);
            if (_left[j] <= Done) OwnWorkOver(j);
        }
    }

    int Choose(byte offers)
    {
        var best = int.MaxValue;
        for (var i = 0; i < _begunCount; i++)
            if (_begun[i] < best && (_model.Lines[_begun[i]].Needs & ~offers) == 0) best = _begun[i];
        if (best < int.MaxValue) return best;
        while (_ready.First(offers, _free) is >= 0 and var j)
        {
            _ready.Remove(j);
            if (!_paid[j] && !_purse.Pay(_next.Length + j, _draws.Cost[j], _now)) continue;
            Begin(j);
            return j;
        }
        return -1;
    }

    void Begin(int j)
    {
        var place = _model.Lines[j].Place;
        _start[j] = _now;
        // What had it begin now and not before: its own release, its place coming free, or the person being at other work.
        _cause[j] = _readyAt[j] >= _lastWork ? _releasedBy[j]
            : place > 0 && _freedAt[place] >= _lastWork ? _freedBy[place]
            : _lastWorked;
        if (place > 0) _free[place]--;
        _begun[_begunCount++] = j;
    }

    void OwnWorkOver(int j)
    {
        var i = Array.IndexOf(_begun, j, 0, _begunCount);
        _begun[i] = _begun[--_begunCount];
        Behind(j, _model.Lines[j].Behind);
    }

    void Behind(int j, int lead)
    {
        if (lead < 0) Over(j);
        else Order(lead);
    }

    void Over(int j)
    {
        _end[j] = _now;
        _over++;
        if (_model.Lines[j].Place is > 0 and var place)
        {
            _free[place]++;
            (_freedAt[place], _freedBy[place]) = (_now, j);
        }
        for (var i = _model.FollowerStart[j]; i < _model.FollowerStart[j + 1]; i++)
            if (--_waits[_model.Followers[i]] == 0) Ready(_model.Followers[i], j);
    }

    void Ready(int j, int by)
    {
        (_readyAt[j], _releasedBy[j]) = (_now, by);
        _ready.Add(j);
    }

    void Events()
    {
        while (_head[_day] is >= 0 and var k)
        {
            _head[_day] = _next[k];
            if (_ordered[k]) Arrive(k);
            else Order(k);
        }
    }

    void Put(int lead, int day)
    {
        if (day > _model.Horizon) return;
        _next[lead] = _head[day];
        _head[day] = lead;
    }

    void Order(int k)
    {
        ref readonly var lead = ref _model.Leads[k];
        if (lead.Ordered || _purse.Pay(k, _draws.Price[k] * lead.Deposit, _now)) OnItsWay(k);
    }

    void OnItsWay(int k)
    {
        ref readonly var lead = ref _model.Leads[k];
        _ordered[k] = true;
        var here = (int)MathF.Ceiling((lead.Ordered ? lead.Order : _now) + _draws.Days[k]);
        if (here <= _now) Arrive(k);
        else Put(k, here);
    }

    void Arrive(int k)
    {
        if (_purse.Pay(k, _draws.Price[k] * (1 - _model.Leads[k].Deposit), _now)) Here(k);
    }

    void Here(int k)
    {
        ref readonly var lead = ref _model.Leads[k];
        if (!lead.Before) Behind(lead.Job, lead.Next);
        else if (--_waits[lead.Job] == 0) Ready(lead.Job, -1);
    }

    void Paid(int node)
    {
        if (node >= _next.Length)
        {
            _paid[node - _next.Length] = true;
            Ready(node - _next.Length, -1);
        }
        else if (_ordered[node]) Here(node);
        else OnItsWay(node);
    }

    /// <summary>Each job began after its cause had begun, so the way back ends.</summary>
    void Trace(int last)
    {
        for (var j = last; j >= 0 && _start[j] < _model.Horizon; j = _cause[j]) _critical[j]++;
    }
}
