using WitnessMark.FrontOffice.PlanNext;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Web.Client.BackRoom;

namespace WitnessMark.Web.Client.PlanningOffice.Frame;

/// <summary>What the pages ask about a plan.</summary>
static class PlanQuestions
{
    /// <summary>The plan as it stands, its jobs taken in the order of work.</summary>
    /// <exception cref="WitnessMark.Maths.RefusedException">The plan has no order.</exception>
    public static PlanAsked Asked(this PlanBook book, DateOnly today) => new(
        book.Rows, [.. book.Milestones.Select(m => m.Row)], book.Means.Row, today, WeeklyTime.Usual,
        [.. PlanNext.Order(book.Next, today).Select(p => p.Job)], []);
}
