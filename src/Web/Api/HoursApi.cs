using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>Hours worked, appended; the person's calendar and the order of work.</summary>
static class HoursApi
{
    public static void MapHours(this IEndpointRouteBuilder api)
    {
        api.MapGet("vehicles/{id:guid}/hours", (Guid id, IHoursLog log, CancellationToken stop) => log.History(id, stop));
        api.MapPost("hours/starts", async (ImmutableArray<Started> rows, IHoursLog log, CancellationToken stop) => new Recorded(await log.Append(SampleApi.Whole(rows), stop)));
        api.MapPost("hours/entries", async (ImmutableArray<HoursEntry> rows, IHoursLog log, CancellationToken stop) => new Recorded(await log.Append(SampleApi.Whole(rows), stop)));
        api.MapPost("hours/withdrawals", async (ImmutableArray<HoursWithdrawal> rows, IHoursLog log, CancellationToken stop) => new Recorded(await log.Withdraw(SampleApi.Whole(rows), stop)));
        api.MapGet("vehicles/{id:guid}/order", (Guid id, IJobStore store, CancellationToken stop) => store.Order(id, stop));
        api.MapPut("vehicles/{id:guid}/order", async (Guid id, Saving<StandingOrder> order, IJobStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(VehicleApi.Own(order.Row, order.Row.Id, id), order.BasedOn, stop)));
        api.MapGet("calendar", (IJobStore store, CancellationToken stop) => store.Calendar(stop));
        api.MapPut("calendar", async (Saving<WorkCalendar> row, IJobStore store, CancellationToken stop) => Answer.Saved(await store.Save(row.Row, row.BasedOn, stop)));
    }
}
