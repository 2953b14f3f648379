using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>All that chance decides in one future, drawn before anything is scheduled. One worker's, used over and over.</summary>
sealed class Draws(Model model)
{
    readonly Chance _chance = new(0);
    readonly double[] _logs = new double[model.Groups.Length];
    readonly float[] _factors = new float[model.Groups.Length];
    readonly float _jobSd = (float)model.Input.Pace.JobSd;

    public float[] Hours { get; } = new float[model.Lines.Length];

    public float[] Cost { get; } = new float[model.Lines.Length];

    /// <summary>Days each lead time takes.</summary>
    public float[] Days { get; } = new float[model.Leads.Length];

    public float[] Price { get; } = new float[model.Leads.Length];

    public bool[] Found { get; } = new bool[model.Finds.Length];

    public OwnDays Own { get; } = new(model.Input.Today, model.Horizon + 1);

    public void Draw(int future)
    {
        OwnTime(future);
        if (model.AtMeans) Means();
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
        _chance.Restart(Keyed.Bits(model.Seed ^ 0x7061636500000000, future));
        model.Input.Pace.Draw(_chance, model.Groups, _logs);
        for (var g = 0; g < _logs.Length; g++) _factors[g] = (float)Math.Exp(_logs[g]);
        return _factors;
    }

    public void OwnTime(int future)
    {
        _chance.Restart(Keyed.Bits(model.Seed ^ 0x74696D6500000000, future));
        model.Input.Time.Draw(_chance, Own);
    }

    /// <summary>What one lead time takes, given what has passed of it.</summary>
    public static float LeadDays(in LeadLine lead, ulong bits) => lead.Days.Draw(lead.From + (1 - lead.From) * Keyed.Upper(bits));

    void Jobs(int future)
    {
        var factors = Factors(future);
        var lines = model.Lines;
        for (var j = 0; j < lines.Length; j++)
        {
            ref readonly var line = ref lines[j];
            Hours[j] = JobHours(line, factors, future);
            Cost[j] = line.Cost.None ? 0 : line.Cost.Draw(Keyed.Upper(Keyed.Bits(line.CostKey, future)));
        }
    }

    public float JobHours(in JobLine line, ReadOnlySpan<float> factors, int future)
    {
        var bits = Keyed.Bits(line.HoursKey, future);
        var hours = line.Hours.Draw(Keyed.Upper(bits)) * factors[line.Group];
        return _jobSd > 0 ? hours * MathF.Exp(_jobSd * QuantileTable.Normal.At(Keyed.Lower(bits))) : hours;
    }

    void Leads(int future)
    {
        var leads = model.Leads;
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
        for (var d = 0; d < model.Finds.Length; d++)
        {
            ref readonly var find = ref model.Finds[d];
            Found[d] = IsSo(model, find, future);
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
            Hours[after.Job] += after.Hours.Draw(Keyed.Upper(bits)) * _factors[model.Lines[after.Job].Group];
            if (after.Lead >= 0) Days[after.Lead] += after.Days.Draw(Keyed.Lower(bits));
            if (!after.Cost.None) Cost[after.Job] += after.Cost.Draw(Keyed.Upper(Keyed.Mix(bits)));
        }
    }

    void Means()
    {
        for (var j = 0; j < Hours.Length; j++) (Hours[j], Cost[j]) = (model.Lines[j].Hours.Mean, model.Lines[j].Cost.Mean);
        for (var k = 0; k < Days.Length; k++) (Days[k], Price[k]) = (model.Leads[k].Days.Mean, model.Leads[k].Price.Mean);
        foreach (var find in model.Finds)
            foreach (var after in find.Then)
            {
                Hours[after.Job] += (float)find.Odds * after.Hours.Mean;
                if (after.Lead >= 0) Days[after.Lead] += (float)find.Odds * after.Days.Mean;
            }
    }
}
