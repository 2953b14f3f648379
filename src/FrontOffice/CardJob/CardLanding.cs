using WitnessMark.PlanningOffice;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.CardJob;

/// <summary>A job card put into the plan.</summary>
public static class CardLanding
{
    /// <summary>
    /// Where the card lands in a plan: on the part's making job that is open and has no other card, which keeps its place between its
    /// neighbours; else as a job of its own.
    /// </summary>
    public static Versioned<Job> Of(RouteCard card, IEnumerable<Versioned<Job>> plan, Guid id, Guid vehicle, Part part)
    {
        var jobs = plan.Where(j => j.Row.PartId == part.Id).ToList();
        var same = jobs.FirstOrDefault(j => j.Row.Id == id);
        var making = jobs.FirstOrDefault(j => j.Row is { Kind: WorkKind.Make, State: not JobState.Done } && (j.Row.Card is null || j.Row.Card.Title == card.Title));
        var job = Job.Of(id, vehicle, part.SystemId, part.Id, card);
        if (same.Row is not null || making.Row is null) return new(job with { After = same.Row?.After ?? [] }, same.Version);
        return new(making.Row with { Hours = job.Hours, Cost = job.Cost, Card = job.Card, Leads = [.. making.Row.Leads.Where(l => l.Side == LeadSide.Before), .. job.Leads] }, making.Version);
    }
}
