using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>All that chance decides in one future, drawn before anything is scheduled. One worker's, used over and over.</summary>
sealed class Draws
{
    readonly Model _model;
    readonly Func<Chance, double> _pace;
    readonly Chance _chance = new(0);
    readonly double[] _logs;
    readonly float[] _factors;

    public Draws(Model model)
    {
        _model = model;
        (_logs, _factors) = (new double[model.Groups.Length], new float[model.Groups.Length]);
        (Hours, Cost) = (new float[model.Lines.Length], new float[model.Lines.Length]);
        (Days, Price, Found) = (new float[model.Leads.Length], new float[model.Leads.Length], new bool[model.Finds.Length]);
        Own = new(model.Input.Calendar, model.Input.Today, model.Horizon + 1);
        _pace = model.Input.Pace.Into([.. model.Groups], _logs);
    }

    public float[] Hours { get; }

    public float[] Cost { get; }

    /// <summary>Days each lead time takes.</summary>
    public float[] Days { get; }

    public float[] Price { get; }

    public bool[] Found { get; }

    public DayTable Own { get; }

    /// <summary>Standard deviation of a single job's own logarithm in the future whose <see cref="Factors"/> were asked for last.</summary>
    public float OwnSd { get; private set; }

    public void Draw(int future)
    {
        OwnTime(future);
        if (_model.AtMeans) Means();
        else
        {
            Jobs(future);
            Leads(future);
            Finds(future);
        }
    }

    /// <summary>Factors that groups of jobs share in this future.</summary>
    public ReadOnlySpan<float> Factors(int future)
    {
        _chance.Restart(Keyed.Bits(_model.Seed ^ 0x7061636500000000, future));
        OwnSd = (float)_pace(_chance);
        for (var g = 0; g < _logs.Length; g++) _factors[g] = (float)Math.Exp(_logs[g]);
        return _factors;
    }

    public void OwnTime(int future)
    {
        _chance.Restart(Keyed.Bits(_model.Seed ^ 0x74696D6500000000, future));
        Own.Draw(_chance);
    }

    /// <summary>What one lead time takes, given what has passed of it.</summary>
    public static float LeadDays(in LeadLine lead, ulong bits) => lead.Days.Draw(lead.From + (1 - lead.From) * Keyed.Upper(bits));

    void Jobs(int future)
    {
        var factors = Factors(future);
        var lines = _model.Lines;
        for (var j = 0; j < lines.Length; j++)
        {
            ref readonly var line = ref lines[j];
            Hours[j] = JobHours(line, factors, OwnSd, future);
            Cost[j] = line.Cost.None ? 0 : line.Cost.Draw(Keyed.Upper(Keyed.Bits(line.CostKey, future)));
        }
    }

    public static float JobHours(in JobLine line, ReadOnlySpan<float> factors, float ownSd, int future)
    {
        var bits = Keyed.Bits(line.HoursKey, future);
        var hours = line.Hours.Draw(Keyed.Upper(bits)) * factors[line.Group];
        return ownSd > 0 ? hours * MathF.Exp(ownSd * QuantileTable.Normal.At(Keyed.Lower(bits))) : hours;
    }

    void Leads(int future)
    {
        var leads = _model.Leads;
        for (var k = 0; k < leads.Length; k++)
        {
            ref readonly var lead = ref leads[k];
            var bits = Keyed.Bits(lead.Key, future);
            Days[k] = LeadDays(lead, bits);
            Price[k] = lead.Price.Draw(Keyed.Lower(bits));
        }
    }

    void Finds(int future)
    {
        for (var d = 0; d < _model.Finds.Length; d++)
        {
            ref readonly var find = ref _model.Finds[d];
            Found[d] = IsSo(_model, find, future);
            if (Found[d]) Add(find.Then, future);
        }
    }

    /// <summary>Whether it is so in a future.</summary>
    public static bool IsSo(Model model, in FindLine find, int future)
    {
        if (find.Found >= 0) return find.Found == 1;
        var own = QuantileTable.Normal.At(Keyed.Upper(Keyed.Bits(find.Key, future)));
        if (find.Cause < 0) return own < find.Edge;
        var common = model.Causes[find.Cause].Draw((Keyed.Bits(model.CauseKeys[find.Cause], future) >> 11) * (1.0 / (1UL << 53)));
        return find.Pull * (float)common + find.Own * own < find.Edge;
    }

    void Add(AfterLine[] then, int future)
    {
        foreach (ref readonly var after in then.AsSpan())
        {
            var bits = Keyed.Bits(after.Key, future);
            Hours[after.Job] += after.Hours.Draw(Keyed.Upper(bits)) * _factors[_model.Lines[after.Job].Group];
            if (after.Lead >= 0) Days[after.Lead] += after.Days.Draw(Keyed.Lower(bits));
            if (!after.Cost.None) Cost[after.Job] += after.Cost.Draw(Keyed.Upper(Keyed.Mix(bits)));
        }
    }

    void Means()
    {
        for (var j = 0; j < Hours.Length; j++) (Hours[j], Cost[j]) = (_model.Lines[j].Hours.Mean, _model.Lines[j].Cost.Mean);
        for (var k = 0; k < Days.Length; k++) (Days[k], Price[k]) = (_model.Leads[k].Days.Mean, _model.Leads[k].Price.Mean);
        foreach (var find in _model.Finds)
            foreach (var after in find.Then)
            {
                Hours[after.Job] += (float)find.Odds * after.Hours.Mean;
                if (after.Lead >= 0) Days[after.Lead] += (float)find.Odds * after.Days.Mean;
            }
    }
}
