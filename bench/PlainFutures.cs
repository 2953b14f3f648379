using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.Bench;

/// <summary>
/// The same model told as plainly as can be, without money and discoveries: on each day the list is searched from the top for
/// a job that can be worked on; betas are drawn as ratios of gammas. Supplies are ordered today.
/// </summary>
sealed class PlainFutures(PlanInput plan)
{
    sealed class Course(Job job)
    {
        public Job Job { get; } = job;
        public double Left, Supply, Over = double.PositiveInfinity;
        public bool Begun, Worked;
    }

    readonly DayTable _days = new(plan.Calendar, plan.Today, 7306);

    /// <returns>Days from today until all is over.</returns>
    public double Finish(Chance chance)
    {
        _days.Draw(chance);
        var log = new double[1];
        var own = plan.Pace.Into([default], log)(chance);
        var jobs = plan.Jobs.ToDictionary(j => j.Id, j => new Course(j));
        foreach (var c in jobs.Values)
        {
            c.Left = c.Job.Hours.Spread.Draw(chance) * Math.Exp(log[0] + own * chance.Normal());
            foreach (var lead in c.Job.Leads.Where(l => l.Side == LeadSide.Before)) c.Supply = Math.Max(c.Supply, Math.Ceiling(lead.Days.Spread.Draw(chance)));
        }
        for (var day = 0; day < _days.Days && jobs.Values.Any(c => !c.Worked); day++)
        {
            var light = _days.CumulativeNoisy[day] - (day > 0 ? _days.CumulativeNoisy[day - 1] : 0);
            Work(jobs, day, light, true, 0, chance);
            Work(jobs, day, Math.Round(_days.Cumulative[day] - (day > 0 ? _days.Cumulative[day - 1] : 0) - light, 9), false, 0.5, chance);
        }
        return jobs.Values.Max(c => c.Over);
    }

    void Work(Dictionary<Guid, Course> jobs, int day, double hours, bool light, double from, Chance chance)
    {
        var left = hours;
        while (left > 0 && Next(jobs, day, day + from + (hours > 0 ? (hours - left) / hours / 2 : 0), light) is { } c)
        {
            c.Begun = true;
            var done = Math.Min(left, c.Left);
            left -= done;
            c.Left -= done;
            if (c.Left > 1e-9) continue;
            c.Worked = true;
            c.Over = day + from + (hours - left) / hours / 2;
            foreach (var lead in c.Job.Leads.Where(l => l.Side == LeadSide.Behind)) c.Over = Math.Ceiling(c.Over + lead.Days.Spread.Draw(chance));
        }
    }

    Course? Next(Dictionary<Guid, Course> jobs, int day, double now, bool light)
    {
        bool Suits(Needs n) => (light || !(n.Daylight || n.Noisy)) && (!n.DryDay || _days.Dry[day]) && (!n.Helper || _days.Helper[day]);
        bool Free(WorkPlace place) => place == WorkPlace.Anywhere
            || jobs.Values.Count(c => c.Begun && c.Over > now && c.Job.Needs.Place == place) < (place == WorkPlace.Bay ? plan.Means.Bays : plan.Means.Benches);
        return jobs.Values.FirstOrDefault(c => c is { Begun: true, Worked: false } && Suits(c.Job.Needs))
            ?? jobs.Values.FirstOrDefault(c => !c.Begun && c.Supply <= now && Suits(c.Job.Needs) && c.Job.After.All(a => jobs[a].Over <= now) && Free(c.Job.Needs.Place));
    }
}
