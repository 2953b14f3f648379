using System.Collections.Immutable;
using WitnessMark.FrontOffice.PlanNext;
using WitnessMark.Web.Client.BackRoom;

namespace WitnessMark.Web.Client.PlanningOffice.Frame;

/// <summary>What the pages ask about a plan.</summary>
static class PlanQuestions
{
    /// <summary>The plan as it stands, its jobs taken in the order of work.</summary>
    /// <exception cref="WitnessMark.Maths.RefusedException">The plan has no order.</exception>
    public static PlanAsked Asked(this PlanBook book, DateOnly today) => book.Asked(today, [.. PlanNext.Order(book.Next, today).Select(p => p.Job)]);

    public static PlanAsked Asked(this PlanBook book, DateOnly today, ImmutableArray<Guid> priority) =>
        new(book.Rows, [.. book.Milestones.Select(m => m.Row)], book.Means.Row, today, book.Calendar.Row, book.Finished, priority, []);
}
