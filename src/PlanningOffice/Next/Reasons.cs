using WitnessMark.PlanningOffice.Plans;

namespace WitnessMark.PlanningOffice.Next;

/// <summary>Why a ready job comes where it does: see <see cref="NextJobs"/>.</summary>
sealed class Reasons
{
    const int LoanDays = 21;
    const double LongWaitDays = 7;

    readonly NextFacts _facts;
    readonly FreeTime _time;
    readonly HashSet<Guid> _critical;
    readonly ILookup<Guid, Job> _opens;
    readonly List<(Milestone Milestone, double Left, HashSet<Guid> Jobs)> _milestones;

    public Reasons(NextFacts facts, List<Job> open, FreeTime time)
    {
        (_facts, _time) = (facts, time);
        _critical = [.. CriticalPath.Of(open, j => Hours(j) / facts.HoursADay + Days.Behind(j)).Where(p => p.Critical).Select(p => p.Job)];
        var ids = open.Select(j => j.Id).ToHashSet();
        _opens = open.Where(j => j.After.Count(ids.Contains) == 1 && PlanCheck.Supplied(j)).ToLookup(j => j.After.First(ids.Contains));
        _milestones =
        [
            .. from m in facts.Milestones
               where m.Weight > 0
               let all = Upstream.Of(m.Jobs, open)
               where all.Count > 0
               let left = all.Sum(Hours)
               orderby left / m.Weight
               select (m, left, all.Select(j => j.Id).ToHashSet()),
        ];
    }

    /// <returns>The rank, the smaller the better; the place within it; the reason, a sentence without its full stop.</returns>
    public (int Rank, double Within, string Words) Of(Job j) =>
        InHand(j) ?? Loan(j) ?? Wait(j) ?? Opens(j) ?? Towards(j)
        ?? (_critical.Contains(j.Id) ? (5, 0, "It lies on the longest path to the finish")
            : j.Hours.High * _facts.Bias(j) <= _time.Hours ? (6, 0, "A small win: over within the time even if it goes badly")
            : (7, 0, "It is ready and it fits"));

    static (int, double, string)? InHand(Job j) => j.State != JobState.InHand ? null
        : (0, 0, j.Needs.Place == WorkPlace.Anywhere ? "It is in hand: finish what is begun"
            : $"It is in hand and holds the {(j.Needs.Place == WorkPlace.Bay ? "bay" : "bench")}: finish what is begun");

    (int, double, string)? Loan(Job j)
    {
        if (j.Kind is not (WorkKind.Survey or WorkKind.Look) || j.PartId is not { } part || !_facts.GoesBack.TryGetValue(part, out var back)) return null;
        var days = back.DayNumber - _time.Today.DayNumber;
        return days > LoanDays ? null : (1, days, days < 0 ? $"What was borrowed for it was due back on {back:yyyy-MM-dd}" : $"What was borrowed for it goes back on {back:yyyy-MM-dd}");
    }

    static (int, double, string)? Wait(Job j) => Days.Behind(j) is >= LongWaitDays and var wait
        ? (2, -wait, $"It starts a wait of about {wait:0} days that runs while you do other things") : null;

    (int, double, string)? Opens(Job j) => _opens[j.Id].MaxBy(Days.Behind) is { } next && Days.Behind(next) is >= LongWaitDays and var wait
        ? (3, -wait, $"\"{next.Title}\" comes next and waits about {wait:0} days: the sooner it is away, the better") : null;

    (int, double, string)? Towards(Job j)
    {
        var at = _milestones.FindIndex(m => m.Jobs.Contains(j.Id));
        return at < 0 ? null : (4, at, $"\"{_milestones[at].Milestone.Name}\" waits for it, {_milestones[at].Left:0} hours away");
    }

    double Hours(Job j) => j.Hours.Spread.Mean * _facts.Bias(j);
}
