using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>The stores: vehicles, parts, samples.</summary>
static class VehicleApi
{
    public static void MapVehicles(this IEndpointRouteBuilder api)
    {
        api.MapGet("vehicles", (IVehicleStore store, CancellationToken stop) => store.Vehicles(stop));
        api.MapGet("vehicles/{id:guid}", async (Guid id, IVehicleStore store, CancellationToken stop) => Answer.Found(await store.Tree(id, stop), "vehicle"));
        api.MapPut("vehicles/{id:guid}", async (Guid id, Saving<Vehicle> row, IVehicleStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(Own(row.Row, row.Row.Id, id), row.BasedOn, stop)));
        api.MapPut("systems/{id:guid}", async (Guid id, Saving<VehicleSystem> row, IVehicleStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(Own(row.Row, row.Row.Id, id), row.BasedOn, stop)));
        api.MapPut("assemblies/{id:guid}", async (Guid id, Saving<Assembly> row, IVehicleStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(Own(row.Row, row.Row.Id, id), row.BasedOn, stop)));
        api.MapPost("vehicles/{id:guid}/changes", async (Guid id, TreeChanges changes, IVehicleStore store, CancellationToken stop) =>
            await store.Apply(Own(changes, changes.VehicleId, id), stop) is var applied && applied.Done
                ? Results.Ok(applied) : Results.Json(applied, statusCode: StatusCodes.Status409Conflict));
        api.MapPut("parts/{id:guid}", async (Guid id, Saving<Part> row, IVehicleStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(Own(row.Row, row.Row.Id, id), row.BasedOn, stop)));
        api.MapPut("samples/{id:guid}", async (Guid id, Saving<PartSample> row, IVehicleStore store, CancellationToken stop) =>
            Answer.Saved(await store.Save(Own(row.Row, row.Row.Id, id), row.BasedOn, stop)));
    }

    /// <summary>The row, when it is the one that the address names.</summary>
    internal static T Own<T>(T row, Guid id, Guid address) =>
        id == address ? row : throw new RefusedException(Refusal.Of("id", id.ToString(), $"the address says {address}"));
}
