using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>Hours worked, appended; the person's calendar and the order of work.</summary>
static class HoursApi
{
    public static void MapHours(this IEndpointRouteBuilder api)
    {
        api.MapGet("vehicles/{id:guid}/hours", (Guid id, IHoursLog log, CancellationToken stop) => log.History(id, stop));
        api.MapPost("hours/starts", async (Started row, IHoursLog log, CancellationToken stop) => await Recorded(log.Append(row, stop)));
        api.MapPost("hours/entries", async (HoursEntry row, IHoursLog log, CancellationToken stop) => await Recorded(log.Append(row, stop)));
        api.MapPost("hours/withdrawals", async (HoursWithdrawal row, IHoursLog log, CancellationToken stop) => await Recorded(log.Withdraw(row, stop)));
        api.MapGet("vehicles/{id:guid}/order", (Guid id, IJobStore store, CancellationToken stop) => store.Order(id, stop));
        api.MapPut("vehicles/{id:guid}/order", async (Guid id, Saving<StandingOrder> order, IJobStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(VehicleApi.Own(order.Row, order.Row.Id, id), order.BasedOn, stop)));
        api.MapGet("calendar", (IJobStore store, CancellationToken stop) => store.Calendar(stop));
        api.MapPut("calendar", async (Saving<WorkCalendar> row, IJobStore store, CancellationToken stop) => Answer.Saved(await store.Save(row.Row, row.BasedOn, stop)));
    }

    static async Task<Recorded> Recorded(Task append)
    {
        await append;
        return new(1);
    }
}
