using System.Collections.Immutable;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>
/// The stores' desk: each kind of row has the address of its name. Decisions are saved under a version, facts are appended. The handlers are
/// plain functions of the request: made from lambdas with parameters, those of 26 kinds took a third of a second at the first request.
/// </summary>
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
        var address = Address<T>();
        api.MapGet(address, async context => await context.Write(await rows(Desk(context)).Of(Vehicle(context), context.RequestAborted)));
        api.MapPut(address + "/{id:guid}", async context =>
        {
            var (asked, id) = (await context.Read<Saving<T>>(), context.Id("id"));
            var row = VehicleApi.Own(VehicleApi.Own(asked.Row, asked.Row.Id, id), asked.Row.VehicleId, Vehicle(context));
            var saved = await rows(Desk(context)).Save(row, asked.BasedOn, context.RequestAborted);
            context.Response.StatusCode = Answer.StatusOf(saved);
            await context.Write(saved);
        });
    }

    static void MapFacts<T>(this IEndpointRouteBuilder api, Func<IStoresDesk, IFacts<T>> rows) where T : class, IFact
    {
        var address = Address<T>();
        api.MapGet(address, async context => await context.Write(await rows(Desk(context)).Of(Vehicle(context), context.RequestAborted)));
        api.MapGet(address + "/newest", async context =>
        {
            var asked = new Newest(context.Asked<long>("before"), context.Asked<Guid>("part"), context.Asked<int>("take") ?? new Newest().Take);
            await context.Write(await rows(Desk(context)).Newest(Vehicle(context), asked, context.RequestAborted));
        });
        api.MapPost(address, async context =>
        {
            var (facts, vehicle) = (SampleApi.Whole(await context.Read<ImmutableArray<T>>()), Vehicle(context));
            await context.Write(new Recorded(await rows(Desk(context)).Append([.. facts.Select(f => VehicleApi.Own(f, f.VehicleId, vehicle))], context.RequestAborted)));
        });
    }

    static string Address<T>() => $"vehicles/{{vehicle:guid}}/desk/{typeof(T).Name}";

    static Guid Vehicle(HttpContext context) => context.Id("vehicle");

    static IStoresDesk Desk(HttpContext context) => context.RequestServices.GetRequiredService<IStoresDesk>();
}
