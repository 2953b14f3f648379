using System.Collections.Immutable;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>The stores' desk: each kind of row has the address of its name. Decisions are saved under a version, facts are appended.</summary>
static class DeskApi
{
    public static void MapDesk(this IEndpointRouteBuilder api)
    {
        api.MapDecisions(d => d.Precedences);
        api.MapDecisions(d => d.Firms);
        api.MapDecisions(d => d.Quotes);
        api.MapDecisions(d => d.Orders);
        api.MapDecisions(d => d.Consignments);
        api.MapDecisions(d => d.Places);
        api.MapDecisions(d => d.Shapes);
        api.MapDecisions(d => d.NotNeeded);
        api.MapDecisions(d => d.Intentions);
        api.MapDecisions(d => d.Photographs);
        api.MapDecisions(d => d.PictureLayers);
        api.MapDecisions(d => d.PicturePairs);
        api.MapFacts(d => d.CameOff);
        api.MapFacts(d => d.PutBack);
        api.MapFacts(d => d.Conditions);
        api.MapFacts(d => d.RoutesChosen);
        api.MapFacts(d => d.Deliveries);
        api.MapFacts(d => d.Rates);
        api.MapFacts(d => d.Returns);
        api.MapFacts(d => d.GivenBack);
        api.MapFacts(d => d.Moves);
        api.MapFacts(d => d.Tags);
        api.MapFacts(d => d.Notes);
        api.MapFacts(d => d.PicturesTaken);
        api.MapFacts(d => d.PicturesSaid);
        api.MapFacts(d => d.TakenBack);
    }

    static void MapDecisions<T>(this IEndpointRouteBuilder api, Func<IStoresDesk, IDecisions<T>> rows) where T : IDecision
    {
        var address = $"vehicles/{{vehicle:guid}}/desk/{typeof(T).Name}";
        api.MapGet(address, (Guid vehicle, IStoresDesk desk, CancellationToken stop) => rows(desk).Of(vehicle, stop));
        api.MapPut($"{address}/{{id:guid}}", async (Guid vehicle, Guid id, Saving<T> row, IStoresDesk desk, CancellationToken stop) =>
            Answer.Saved(await rows(desk).Save(VehicleApi.Own(VehicleApi.Own(row.Row, row.Row.Id, id), row.Row.VehicleId, vehicle), row.BasedOn, stop)));
    }

    static void MapFacts<T>(this IEndpointRouteBuilder api, Func<IStoresDesk, IFacts<T>> rows) where T : class, IFact
    {
        var address = $"vehicles/{{vehicle:guid}}/desk/{typeof(T).Name}";
        api.MapGet(address, (Guid vehicle, IStoresDesk desk, CancellationToken stop) => rows(desk).Of(vehicle, stop));
        api.MapGet($"{address}/newest", (Guid vehicle, long? before, Guid? part, int? take, IStoresDesk desk, CancellationToken stop) =>
            rows(desk).Newest(vehicle, new(before, part, take ?? new Newest().Take), stop));
        api.MapPost(address, async (Guid vehicle, ImmutableArray<T> facts, IStoresDesk desk, CancellationToken stop) =>
            new Recorded(await rows(desk).Append([.. SampleApi.Whole(facts).Select(f => VehicleApi.Own(f, f.VehicleId, vehicle))], stop)));
    }
}
