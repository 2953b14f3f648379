using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Plans;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>Checks a plan and lays it in flat arrays.</summary>
sealed class Compile
{
    /// <summary>Twenty years: no future is followed longer.</summary>
    const int LongestHorizon = 7305;

    readonly PlanInput _input;
    readonly ulong _seed;
    readonly Job[] _jobs;
    readonly Dictionary<Guid, int> _place;
    readonly Dictionary<double, QuantileTable> _shapes;
    readonly List<LeadLine> _leads = [];
    readonly int[] _waits, _behind;
    readonly Purse _purse;

    /// <summary>Jobs that some discovery would keep waiting longer.</summary>
    readonly HashSet<Guid> _lengthened;

    Compile(PlanInput input, ulong seed, Dictionary<double, QuantileTable> shapes)
    {
        _shapes = shapes;
        (_input, _seed, _purse) = (input, seed, input.Means.Purse);
        if (input.Means.Wrong is { } wrong) throw new RefusedException(wrong);
        foreach (var job in input.Jobs)
            if (job.Wrong is { } bad) throw new RefusedException(bad.In($"job \"{job.Title}\""));
        if (input.Pace.JobSd is not (>= 0 and <= 3)) throw new RefusedException(Refusal.Of("own spread of a job", $"{input.Pace.JobSd}", "give a standard deviation of the logarithm from 0 to 3"));
        _jobs = InOrder(input);
        _place = _jobs.Select((j, i) => (j.Id, i)).ToDictionary(x => x.Id, x => x.i);
        _lengthened = [.. from j in _jobs from d in j.MayFind from c in d.Then where c.Days.High > 0 select c.Job ?? j.Id];
        (_waits, _behind) = (new int[_jobs.Length], new int[_jobs.Length]);
    }

    /// <exception cref="RefusedException">Something in the plan is impossible: the sentence names it.</exception>
    public static Model Of(PlanInput input, ulong seed)
    {
        PlanCheck.RefuseRing([.. input.Jobs.Where(j => j.State != JobState.Done)]);
        var shapes = new Dictionary<double, QuantileTable>();
        Model Built(float[]? wanted, int horizon, bool atMeans) => new Compile(input, seed, shapes).Build(wanted, horizon, atMeans);
        Course AtMeans(float[]? wanted)
        {
            var course = new Course(Built(wanted, LongestHorizon, true));
            course.Run(0);
            return course;
        }
        // Once at mean figures, without waiting for supplies or money, to see when supplies are wanted.
        var wanted = AtMeans(null).Started;
        return Built(wanted, Far(Built(wanted, LongestHorizon, false)), false);
    }

    /// <summary>Days to look ahead: half as far again as the latest of a few futures, and a year.</summary>
    static int Far(Model model)
    {
        const int Few = 100;
        var course = new Course(model);
        var latest = 0.0;
        for (var f = 0; f < Few; f++)
        {
            course.Run(f);
            latest = Math.Max(latest, course.Finish);
        }
        return (int)Math.Min(LongestHorizon, 1.5 * latest + 365);
    }

    static Job[] InOrder(PlanInput input)
    {
        var open = new Dictionary<Guid, Job>();
        foreach (var job in input.Jobs)
            if (job.State != JobState.Done && !open.TryAdd(job.Id, job))
                throw new RefusedException(Refusal.Of("job", job.Title, "it is listed twice"));
        if (open.Count == 0) throw new RefusedException(Refusal.Of("jobs", null, "a forecast needs at least one open job"));
        var first = input.Priority.Distinct().Where(open.ContainsKey).Select(id => open[id]).ToList();
        var named = first.Select(j => j.Id).ToHashSet();
        // What is in hand already stands in its bay: it comes first.
        return [.. first.Concat(input.Jobs.Where(j => j.State != JobState.Done && !named.Contains(j.Id))).OrderBy(j => j.State != JobState.InHand)];
    }

    /// <param name="wanted">Day each job would begin if all went as expected; null for the run that finds it.</param>
    Model Build(float[]? wanted, int horizon, bool atMeans)
    {
        var followers = Followers();
        for (var j = 0; j < _jobs.Length; j++) AddLeads(j, wanted);
        var (causes, causeKeys, finds) = Finds();
        var groups = _jobs.Select(j => new PaceGroup(j.Kind, j.SystemId)).Distinct().ToArray();
        return new()
        {
            Input = _input,
            Jobs = _jobs,
            Horizon = horizon,
            Seed = _seed,
            AtMeans = atMeans,
            Waits = _waits,
            Leads = [.. _leads],
            Finds = finds,
            Causes = causes,
            CauseKeys = causeKeys,
            Groups = groups,
            FollowerStart = Starts(followers),
            Followers = [.. followers.SelectMany(f => f)],
            Lines = [.. _jobs.Select((job, j) => Line(job, j, Array.IndexOf(groups, new(job.Kind, job.SystemId))))],
            MilestoneJobs = [.. _input.Milestones.Select(JobsOf)],
            Income = Income(wanted is null, horizon),
        };
    }

    List<int>[] Followers()
    {
        var known = _input.Jobs.Select(j => j.Id).ToHashSet();
        var followers = _jobs.Select(_ => new List<int>()).ToArray();
        for (var j = 0; j < _jobs.Length; j++)
            foreach (var before in _jobs[j].After.Distinct())
            {
                if (!known.Contains(before)) throw new RefusedException(Refusal.Of($"job before \"{_jobs[j].Title}\"", $"{before}", "it must be a job of this plan"));
                if (!_place.TryGetValue(before, out var p)) continue;
                followers[p].Add(j);
                _waits[j]++;
            }
        return followers;
    }

    static int[] Starts(List<int>[] followers)
    {
        var starts = new int[followers.Length + 1];
        for (var j = 0; j < followers.Length; j++) starts[j + 1] = starts[j] + followers[j].Count;
        return starts;
    }

    JobLine Line(Job job, int j, int group) => new(
        Amount(job.Hours, 1), Keyed.Key(job.Id, 0, _seed), group, Money(job.State == JobState.Planned ? job.Cost : Cost.None(_purse.Currency)),
        Keyed.Key(job.Id, 1, _seed), Needs(job), (byte)Place(job), _behind[j]);

    byte Needs(Job job) =>
        (byte)((job.Needs.Daylight || job.Needs.Noisy ? Needed.Daylight : 0) | (job.Needs.DryDay ? Needed.Dry : 0) | (job.Needs.Helper ? Needed.Helper : 0));

    WorkPlace Place(Job job) => job.Needs.Place switch
    {
        WorkPlace.Bay when _input.Means.Bays == 0 => throw Missing(job, "bay"),
        WorkPlace.Bench when _input.Means.Benches == 0 => throw Missing(job, "bench"),
        var place => place,
    };

    static RefusedException Missing(Job job, string place) => new(Refusal.Of($"place of \"{job.Title}\"", $"{job.Needs.Place}", $"there is no {place}; give the plan one or let the job stand anywhere"));

    void AddLeads(int j, float[]? wanted)
    {
        var job = _jobs[j];
        _behind[j] = -1;
        var last = -1;
        for (var k = 0; k < job.Leads.Length; k++)
        {
            if (job.Leads[k] is not { Here: false } lead) continue;
            var before = lead.Side == LeadSide.Before;
            if (before) _waits[j]++;
            var days = wanted is null && before ? default : Amount(lead.Days, 1);
            var order = lead.Ordered is { } on ? on.DayNumber - _input.Today.DayNumber
                : before ? Math.Max(0, OrderDay(job, k, lead, wanted?[j] ?? 0)) : 0;
            var from = order < 0 && days.Shape is { } shape ? shape.Below((-order - days.Low) / days.Range) : 0;
            Chain(j, ref last, new(j, before, -1, order, from, days, Money(lead.Price), (float)lead.Deposit, lead.Ordered is not null, Keyed.Key(job.Id, 100 + k, _seed)));
        }
        if (_lengthened.Contains(job.Id)) Chain(j, ref last, new(j, false, -1, 0, 0, default, default, 0, false, 0));
    }

    void Chain(int j, ref int last, LeadLine line)
    {
        var here = _leads.Count;
        _leads.Add(line);
        if (line.Before) return;
        if (last < 0) _behind[j] = here;
        else _leads[last] = _leads[last] with { Next = here };
        last = here;
    }

    int OrderDay(Job job, int lead, Lead of, float wanted)
    {
        foreach (var order in _input.Orders)
            if (order.Job == job.Id && order.Lead == lead) return order.On.DayNumber - _input.Today.DayNumber;
        return (int)(wanted - of.Days.High - PlanInput.Margin);
    }

    (SharedCause[], ulong[], FindLine[]) Finds()
    {
        var all = _jobs.SelectMany((job, j) => job.MayFind.Select(d => (Job: j, Of: d))).ToList();
        // A job that is done still tells of the cause through what it found.
        var told = _input.Jobs.SelectMany(j => j.MayFind).Where(d => d.Cause.Length > 0).ToLookup(d => d.Cause.Trim(), StringComparer.OrdinalIgnoreCase);
        var names = told.Select(g => g.Key).ToList();
        SharedCause[] causes = [.. told.Select(g => new SharedCause(g.Where(d => d.Found is not null).Select(d => (d.Odds, d.Pull, d.Found!.Value))))];
        ulong[] keys = [.. names.Select(n => Keyed.Mix(_seed ^ Named(n)))];
        FindLine[] finds = [.. all.Select(x =>
        {
            var cause = names.FindIndex(n => string.Equals(n, x.Of.Cause.Trim(), StringComparison.OrdinalIgnoreCase));
            var odds = x.Of.Found is { } found ? found ? 1 : 0 : cause < 0 ? x.Of.Odds : causes[cause].Odds(x.Of.Odds, x.Of.Pull);
            return new FindLine(cause, (float)SharedCause.Edge(x.Of.Odds), (float)Math.Sqrt(x.Of.Pull), (float)Math.Sqrt(1 - x.Of.Pull),
                x.Of.Found is { } known ? known ? 1 : 0 : -1, Keyed.Key(x.Of.Id, 2, _seed), [.. x.Of.Then.SelectMany((c, k) => After(c, x.Job, x.Of, k))], x.Of, x.Job, odds);
        })];
        return (causes, keys, finds);
    }

    IEnumerable<AfterLine> After(Consequence c, int looks, Discovery of, int k)
    {
        var job = c.Job is { } id ? _place.TryGetValue(id, out var p) ? p : -1 : looks;
        // What would grow a job that is done, or one of no plan, has nothing left to grow.
        if (job < 0) yield break;
        var lead = -1;
        if (c.Days.High > 0)
            for (lead = _behind[job]; _leads[lead].Next >= 0;) lead = _leads[lead].Next;
        yield return new(job, lead, Amount(c.Hours, 1), Amount(c.Days, 1), Money(c.Cost), Keyed.Key(of.Id, 10 + k, _seed));
    }

    int[] JobsOf(Milestone milestone)
    {
        if (milestone.Wrong is { } wrong) throw new RefusedException(wrong);
        foreach (var id in milestone.Jobs)
            if (_input.Jobs.All(j => j.Id != id)) throw new RefusedException(Refusal.Of($"job of \"{milestone.Name}\"", $"{id}", "it must be a job of this plan"));
        return [.. milestone.Jobs.Where(_place.ContainsKey).Select(id => _place[id])];
    }

    MoneyIn Income(bool endless, int horizon)
    {
        var once = new double[horizon + 1];
        var today = _input.Today;
        var onHand = _purse.OnHand is { } held ? (double)held.Amount : 0;
        foreach (var sum in _purse.Once)
        {
            // What came or went before the count of the money on hand is in it.
            if (_purse.OnHand is { } counted && sum.On <= counted.On) continue;
            var day = Math.Max(0, sum.On.DayNumber - today.DayNumber);
            if (day <= horizon) once[day] += (double)sum.Amount;
        }
        int[] months = [.. Enumerable.Range(1, horizon).Where(d => today.AddDays(d).Day == 1)];
        return new(!endless && _purse.OnHand is not null, onHand, Amount(_purse.EachMonth, 1), once, months, Keyed.Mix(_seed ^ Named("purse")));
    }

    Amount Money(Cost cost)
    {
        if (cost is { Low: 0, High: 0 }) return default;
        return Amount(new((double)cost.Low, (double)cost.Likely, (double)cost.High), _purse.Worth(cost.Currency));
    }

    Amount Amount(ThreePoint p, double worth)
    {
        if (p.High <= p.Low) return new((float)(p.Low * worth), 0, null);
        var mode = (p.Likely - p.Low) / (p.High - p.Low);
        if (!_shapes.TryGetValue(mode, out var shape)) _shapes[mode] = shape = QuantileTable.Pert(mode);
        return new((float)(p.Low * worth), (float)((p.High - p.Low) * worth), shape);
    }

    static ulong Named(string name)
    {
        var h = 14695981039346656037;
        foreach (var c in name.ToUpper(CultureInfo.InvariantCulture)) h = Keyed.Mix(h ^ c);
        return h;
    }
}
