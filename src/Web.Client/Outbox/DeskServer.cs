using System.Collections.Immutable;
using System.Net.Http.Headers;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>The stores' desk, the hours and the calendar over HTTP. Each kind of row has the address of its name.</summary>
public sealed class DeskServer(Server server)
{
    public Task<Reply<ImmutableArray<Versioned<T>>>> Decisions<T>(Guid vehicle) where T : IDecision =>
        server.Get(Address<T>(vehicle), DeskJson.Of<ImmutableArray<Versioned<T>>>());

    public Task<Reply<Saved<T>>> Save<T>(T row, int basedOn) where T : IDecision =>
        server.Send(HttpMethod.Put, $"{Address<T>(row.VehicleId)}/{row.Id}", new Saving<T>(row, basedOn), DeskJson.Of<Saving<T>>(), DeskJson.Of<Saved<T>>());

    /// <summary>Those that stand.</summary>
    public Task<Reply<ImmutableArray<T>>> Facts<T>(Guid vehicle) where T : IFact =>
        server.Get(Address<T>(vehicle), DeskJson.Of<ImmutableArray<T>>());

    /// <summary>A stretch of those that stand, newest arrival first.</summary>
    public Task<Reply<Stretch<T>>> Newest<T>(Guid vehicle, Newest asked) where T : IFact =>
        server.Get($"{Address<T>(vehicle)}/newest?take={asked.Take}&before={asked.Before}&part={asked.PartId}", DeskJson.Of<Stretch<T>>());

    public Task<Reply<Recorded>> Append<T>(params ImmutableArray<T> facts) where T : IFact =>
        server.Send(HttpMethod.Post, Address<T>(facts[0].VehicleId), facts, DeskJson.Of<ImmutableArray<T>>(), DeskJson.Of<Recorded>());

    public Task<Reply<HoursHistory>> Hours(Guid vehicle) => server.Get($"api/vehicles/{vehicle}/hours", DeskJson.Of<HoursHistory>());

    public Task<Reply<Recorded>> Start(Started row) => Post("api/hours/starts", row);

    public Task<Reply<Recorded>> Log(HoursEntry row) => Post("api/hours/entries", row);

    public Task<Reply<Recorded>> TakeBack(HoursWithdrawal row) => Post("api/hours/withdrawals", row);

    public Task<Reply<Versioned<WorkCalendar>>> Calendar() => server.Get("api/calendar", DeskJson.Of<Versioned<WorkCalendar>>());

    public Task<Reply<Saved<WorkCalendar>>> Save(WorkCalendar row, int basedOn) =>
        server.Send(HttpMethod.Put, "api/calendar", new(row, basedOn), DeskJson.Of<Saving<WorkCalendar>>(), DeskJson.Of<Saved<WorkCalendar>>());

    public Task<Reply<Versioned<StandingOrder>>> Order(Guid vehicle) => server.Get($"api/vehicles/{vehicle}/order", DeskJson.Of<Versioned<StandingOrder>>());

    public Task<Reply<Saved<StandingOrder>>> Save(StandingOrder row, int basedOn) =>
        server.Send(HttpMethod.Put, $"api/vehicles/{row.Id}/order", new(row, basedOn), DeskJson.Of<Saving<StandingOrder>>(), DeskJson.Of<Saved<StandingOrder>>());

    /// <param name="stream">Of a JPEG, PNG or WebP picture.</param>
    public Task<Reply<KeptPicture>> Keep(Stream stream)
    {
        var content = new StreamContent(stream);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        return server.Send(HttpMethod.Post, "api/pictures", content, DeskJson.Of<KeptPicture>());
    }

    /// <summary>A picture as it was kept.</summary>
    public Task<Reply<Picture>> Picture(string id) => server.Picture(id);

    static string Address<T>(Guid vehicle) => $"api/vehicles/{vehicle}/desk/{typeof(T).Name}";

    Task<Reply<Recorded>> Post<T>(string address, T row) => server.Send(HttpMethod.Post, address, row, DeskJson.Of<T>(), DeskJson.Of<Recorded>());
}
