using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Order.Search;

/// <summary>
/// A steady population of lists: two parents, one child, justified both ways, which takes the place of the worst. When
/// nothing new comes for long it begins afresh and keeps the best.
/// </summary>
sealed class Population
{
    const int Size = 40;

    /// <summary>Children without a better best after which it begins afresh.</summary>
    const int Patience = 6000;

    readonly Project _project;
    readonly OrderWish _wish;
    readonly Chance _chance;
    readonly Decoder _decoder;
    readonly Breeding _breeding;
    readonly Member[] _members;
    readonly int[] _floors, _trial;
    Member _child;
    int _born, _fruitless;

    public Population(Project project, OrderWish wish, Chance chance, Schedule? known)
    {
        (_project, _wish, _chance) = (project, wish, chance);
        var web = new Web(project, wish.Standing.IsEmpty ? 0 : wish.Standing.Max());
        (_decoder, _breeding) = (new Decoder(web), new Breeding(web, chance));
        _members = [.. Enumerable.Range(0, Size).Select(_ => new Member(web.Count))];
        (_child, Best) = (new Member(web.Count), new Member(web.Count));
        (_floors, _trial) = (new int[web.Count], new int[web.Count]);
        if ((known ?? (wish.Standing.IsEmpty ? null : new Schedule(wish.Standing))) is { } begin) Join(begin);
        else First();
    }

    public Member Best { get; }

    /// <summary>Schedules made so far; a justification counts as two.</summary>
    public long Schedules { get; private set; }

    /// <summary>One more member or child.</summary>
    /// <returns>Whether it is the best so far.</returns>
    public bool Step()
    {
        if (_born < Size) Sample();
        else Breed();
        var better = Settled();
        _fruitless = better ? 0 : _fruitless + 1;
        if (_fruitless > Patience) (_born, _fruitless) = (0, 0);
        return better;
    }

    /// <summary>A schedule found elsewhere becomes one of the population.</summary>
    public void Join(Schedule found)
    {
        Follow(found.Starts.AsSpan());
        Array.Fill(_child.Held, !_wish.Standing.IsEmpty);
        _fruitless = Settled() ? 0 : _fruitless;
    }

    /// <summary>One schedule without justification, so that there is one soon.</summary>
    void First()
    {
        _decoder.Web.Sequence.CopyTo(_child.List, 0);
        _child.Makespan = _decoder.Serial(_child.List, _child.Starts);
        _child.Cost = _wish.Cost(_project, _child.Starts);
        Schedules++;
        Copy(_child, Best);
        Settle();
    }

    /// <summary>Decodes the child and settles it.</summary>
    /// <returns>Whether it is the best so far.</returns>
    bool Settled()
    {
        Schedules += Decode(_child);
        var better = _child.Cost < Best.Cost;
        if (better) Copy(_child, Best);
        Settle();
        return better;
    }

    /// <summary>The list of a known schedule; where a slip has put it out of order precedence wins.</summary>
    void Follow(ReadOnlySpan<int> starts)
    {
        var web = _decoder.Web;
        foreach (var i in web.Sequence)
        {
            _trial[i] = starts[i];
            foreach (var p in web.Before[i]) _trial[i] = Math.Max(_trial[i], _trial[p] + web.Durations[p]);
        }
        _decoder.ByStart(_trial).CopyTo(_child.List);
    }

    void Sample()
    {
        _breeding.Sample(_child.List, 2 + _chance.Below(3));
        for (var i = 0; i < _child.Held.Length; i++) _child.Held[i] = !_wish.Standing.IsEmpty && _chance.Uniform() < 0.8;
    }

    void Breed()
    {
        _breeding.Cross(Winner(), Winner(), _child);
        _breeding.Mutate(_child.List, _chance.Below(4));
        if (!_wish.Standing.IsEmpty && _chance.Uniform() < 0.5) _child.Held[_chance.Below(_child.Held.Length)] ^= true;
    }

    Member Winner()
    {
        var (a, b) = (_members[_chance.Below(Size)], _members[_chance.Below(Size)]);
        return a.Cost <= b.Cost ? a : b;
    }

    int Decode(Member m)
    {
        for (var i = 0; i < _floors.Length; i++) _floors[i] = m.Held[i] ? _wish.Standing[i] : 0;
        m.Makespan = _decoder.Serial(m.List, m.Starts, _floors);
        m.Cost = _wish.Cost(_project, m.Starts);
        // Justification would move what is to stand.
        if (!_wish.Standing.IsEmpty) return 1;
        m.Starts.CopyTo(_trial, 0);
        var makespan = _decoder.Justify(_trial, m.Makespan);
        var cost = _wish.Cost(_project, _trial);
        if (cost > m.Cost) return 3;
        (m.Makespan, m.Cost) = (makespan, cost);
        _trial.CopyTo(m.Starts, 0);
        _decoder.ByStart(_trial).CopyTo(m.List);
        return 3;
    }

    /// <summary>The child takes a free place or that of the worst, unless it is no better or there already.</summary>
    void Settle()
    {
        if (_born < Size)
        {
            (_members[_born], _child) = (_child, _members[_born]);
            _born++;
            return;
        }
        var worst = 0;
        for (var k = 0; k < Size; k++)
        {
            if (_members[k].Same(_child)) return;
            if (_members[k].Cost > _members[worst].Cost) worst = k;
        }
        if (_child.Cost <= _members[worst].Cost) (_members[worst], _child) = (_child, _members[worst]);
    }

    static void Copy(Member from, Member to)
    {
        from.List.CopyTo(to.List, 0);
        from.Held.CopyTo(to.Held, 0);
        from.Starts.CopyTo(to.Starts, 0);
        (to.Makespan, to.Cost) = (from.Makespan, from.Cost);
    }
}
