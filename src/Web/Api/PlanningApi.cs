using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>The planning office: jobs and the person's shop.</summary>
static class PlanningApi
{
    public static void MapPlanning(this IEndpointRouteBuilder api)
    {
        api.MapGet("vehicles/{id:guid}/jobs", (Guid id, IJobStore store, CancellationToken stop) => store.Jobs(id, stop));
        api.MapPut("jobs/{id:guid}", async (Guid id, Saving<Job> job, IJobStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(VehicleApi.Own(job.Row, job.Row.Id, id), job.BasedOn, stop)));
        api.MapGet("vehicles/{id:guid}/milestones", (Guid id, IJobStore store, CancellationToken stop) => store.Milestones(id, stop));
        api.MapPut("milestones/{id:guid}", async (Guid id, Saving<Milestone> milestone, IJobStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(VehicleApi.Own(milestone.Row, milestone.Row.Id, id), milestone.BasedOn, stop)));
        api.MapGet("vehicles/{id:guid}/means", (Guid id, IJobStore store, CancellationToken stop) => store.Means(id, stop));
        api.MapPut("vehicles/{id:guid}/means", async (Guid id, Saving<Means> means, IJobStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(VehicleApi.Own(means.Row, means.Row.Id, id), means.BasedOn, stop)));
        api.MapGet("shop", (IJobStore store, CancellationToken stop) => store.Shop(stop));
        api.MapPut("shop", async (Saving<Shop> shop, IJobStore store, CancellationToken stop) => Answer.Saved(await store.Save(shop.Row, shop.BasedOn, stop)));
    }
}
