using WitnessMark.Web.Client.BackRoom;

namespace WitnessMark.Web.Client.PlanningOffice.Frame;

/// <summary>What the pages ask about a plan.</summary>
static class PlanQuestions
{
    /// <summary>The plan as it stands, its jobs taken in the order of work, less what is logged.</summary>
    public static PlanAsked Asked(this PlanBook book)
    {
        var (state, plan) = (book.State, book.State.Input);
        return new(plan.Jobs, plan.Milestones, plan.Means, plan.Today, plan.Calendar, state.Finished, plan.Priority, []);
    }
}
