using WitnessMark.Web.Client.BackRoom;

namespace WitnessMark.Web.Client.PlanningOffice.Frame;

/// <summary>What the pages ask about a plan.</summary>
static class PlanQuestions
{
    /// <summary>The plan as it stands, its jobs taken in the order of work, less what is logged.</summary>
    public static PlanAsked Asked(this PlanBook book)
    {
        var state = book.State;
        return new(state.Ahead, state.Milestones, state.Means, state.Today, state.Calendar, state.Finished, state.InTurn, []);
    }
}
