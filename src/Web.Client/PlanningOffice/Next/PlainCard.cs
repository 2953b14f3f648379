using System.Collections.Immutable;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Print;
using WitnessMark.Web.Client.DrawingOffice.Sheets;
using WitnessMark.Web.Client.PlanningOffice.Frame;

namespace WitnessMark.Web.Client.PlanningOffice.Next;

/// <summary>A card to take into the shed for any job: its own where it has one, else one step with what is known.</summary>
static class PlainCard
{
    public static PrintOut Pdf(Job job, string where, ImmutableArray<string> cautions, DateTimeOffset now, DateOnly today) =>
        PrintOut.Pdf($"{FileNames.Of(job.Title)}-card", JobCard.Sheets(job.Card ?? Of(job, cautions), where, today), now);

    static RouteCard Of(Job job, ImmutableArray<string> cautions)
    {
        var needs = job.Needs.Words();
        var tool = needs.Length > 0 ? $"needs: {needs}" : "needs nothing special";
        return new(job.Title, 1, [], [new(1, job.Title, tool, job.Hours, "as guessed", job.Cost, [], SentOut: null)], cautions);
    }
}
