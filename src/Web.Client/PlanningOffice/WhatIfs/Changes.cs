using System.Collections.Immutable;
using WitnessMark.FrontOffice.PlanJobs;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Web.Client.BackRoom;
using WitnessMark.Web.Client.PlanningOffice.Frame;

namespace WitnessMark.Web.Client.PlanningOffice.WhatIfs;

/// <summary>Plans that differ from the one that stands in one thing.</summary>
static class Changes
{
    const int Saturday = (int)DayOfWeek.Saturday;

    /// <summary>Hours more on each Saturday.</summary>
    public static PlanAsked MoreHours(PlanAsked plan, double hours) =>
        plan with { Calendar = plan.Calendar with { Week = plan.Calendar.Week.SetItem(Saturday, plan.Calendar.Week[Saturday] with { Daylight = plan.Calendar.Week[Saturday].Daylight + hours }) } };

    /// <summary>Supplies that could be ordered later or earlier: not here and not ordered.</summary>
    public static IEnumerable<(Job Job, int Lead)> Orderable(IEnumerable<Job> open) =>
        from job in open
        from n in Enumerable.Range(0, job.Leads.Length)
        where job.Leads[n] is { Side: LeadSide.Before, Here: false, Ordered: null }
        select (job, n);

    public static PlanAsked OrderedOn(PlanAsked plan, Guid job, int lead, DateOnly on) => plan with { Orders = [new(job, lead, on)] };

    /// <summary>A sent-out or curing step begun later: its wait is that much longer.</summary>
    public static PlanAsked SentLater(PlanAsked plan, Guid job, int days) => plan with
    {
        Jobs = [.. plan.Jobs.Select(j => j.Id == job ? j with { Leads = [.. j.Leads.Select(l => l.Side == LeadSide.Behind && !l.Here ? l with { Days = Later(l.Days, days) } : l)] } : j)],
    };

    static ThreePoint Later(ThreePoint days, double more) => new(days.Low + more, days.Likely + more, days.High + more);

    /// <summary>Another route for one part: its open jobs give way to those of the new route; what is done stays done.</summary>
    public static PlanAsked Rerouted(PlanBook book, PlanAsked plan, Guid part, Route route)
    {
        var tree = book.Tree with
        {
            Parts = [.. book.Tree.Parts.Select(p => p.Row.Id == part ? p with { Row = p.Row with { Route = new(route, "what if", plan.Today) } } : p)],
        };
        ImmutableArray<Job> kept = [.. plan.Jobs.Where(j => j.PartId != part || j.State == JobState.Done)];
        var proposal = PlanJobs.Run(new(tree, kept)).Proposal;
        var relinked = proposal.Relinked.ToDictionary(j => j.Id);
        ImmutableArray<Job> all = [.. kept.Select(j => relinked.GetValueOrDefault(j.Id, j)), .. proposal.Missing.Where(j => j.PartId == part)];
        var known = all.Select(j => j.Id).ToHashSet();
        return plan with { Jobs = [.. all.Select(j => j.After.All(known.Contains) ? j : j with { After = [.. j.After.Where(known.Contains)] })] };
    }
}
