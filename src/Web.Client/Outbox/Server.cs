using System.Collections.Immutable;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Outbox.Shelf;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>What the host said.</summary>
/// <param name="Away">It did not answer, or not as itself: try again later.</param>
/// <param name="Refusal">It refused, and will refuse again.</param>
/// <param name="AsOf">When it said so, where this is a copy kept on this device; null when it has just said it.</param>
public readonly record struct Reply<T>(T? Value, bool Away, string? Refusal, DateTimeOffset? AsOf = null)
{
    /// <summary>The same of what the value is made into.</summary>
    public Reply<TTo> As<TTo>(Func<T, TTo> made) => new(Away || Refusal is not null || Value is null ? default : made(Value), Away, Refusal, AsOf);
}

/// <summary>The host's records over HTTP, with what waits here over them.</summary>
public sealed class Server(HttpClient http, HostStanding standing, Tray tray)
{
    /// <summary>Put on a kept copy by service-worker.js.</summary>
    internal const string KeptAt = "x-wm-kept-at";

    /// <summary>Wait between tries while the host is away, ms.</summary>
    const int Patience = 1500;

    static WireJson Json => WireJson.Default;

    /// <summary>
    /// Why the host will not speak with this device: it is not paired, or was dropped. Null when it does. Meanwhile every reply is
    /// <see cref="Reply{T}.Away"/>, so that what waits here goes on waiting until the device is paired again.
    /// </summary>
    public string? Unpaired { get; private set; }

    public event Action? PairingChanged;

    /// <summary>Asks until the host answers.</summary>
    public static async Task<Reply<T>> Patient<T>(Func<Task<Reply<T>>> ask)
    {
        while (true)
        {
            var reply = await ask();
            if (!reply.Away) return reply;
            await Task.Delay(Patience);
        }
    }

    public Task<Reply<ImmutableArray<Versioned<Vehicle>>>> Vehicles() =>
        Laid(Addresses.Vehicles, Json.ImmutableArrayVersionedVehicle, (read, now, copy) => Overlay.Over(read, v => v.Id, _ => true, now, copy));

    public Task<Reply<VehicleTree>> Tree(Guid vehicle) =>
        Laid(Addresses.Vehicle(vehicle), Json.VehicleTree, Overlay.Tree, vehicle, begun => new(new(begun, 0), [], [], [], []));

    public async Task<Reply<BenchFile>> Sample(Guid sample)
    {
        var before = tray.Lying;
        var reply = await Get(Addresses.Sample(sample), Json.BenchFile);
        if (reply.Value is null && tray.Begun<PartSample>(Addresses.Sample(sample)) is { } begun)
            reply = new(new(new(begun, 0), new(new(sample, []), 0), new(new(sample, null), 0), new([], []), []), false, null, reply.AsOf);
        return reply.As(file => Overlay.Bench(file, before, tray.Lying, reply.AsOf is not null));
    }

    public Task<Reply<ImmutableArray<Versioned<Job>>>> Jobs(Guid vehicle) =>
        Laid(Addresses.Jobs(vehicle), Json.ImmutableArrayVersionedJob, (read, now, copy) => Overlay.Over(read, j => j.Id, j => j.VehicleId == vehicle, now, copy), vehicle, _ => []);

    public Task<Reply<ImmutableArray<Versioned<Milestone>>>> Milestones(Guid vehicle) =>
        Laid(Addresses.Milestones(vehicle), Json.ImmutableArrayVersionedMilestone, (read, now, copy) => Overlay.Over(read, m => m.Id, m => m.VehicleId == vehicle, now, copy), vehicle, _ => []);

    public Task<Reply<Versioned<Means>>> Means(Guid vehicle) =>
        Laid(Addresses.Means(vehicle), Json.VersionedMeans, (read, now, copy) => Overlay.One(read, Addresses.Means(vehicle), now, copy), vehicle, _ => new(WitnessMark.PlanningOffice.Means.Usual(vehicle), 0));

    public Task<Reply<Versioned<Shop>>> Shop() => Laid(Addresses.Shop, Json.VersionedShop, (read, now, copy) => Overlay.One(read, Addresses.Shop, now, copy));

    public Task<Reply<ImmutableArray<Versioned<OwnedInstrument>>>> Instruments() =>
        Laid(Addresses.Instruments, Json.ImmutableArrayVersionedOwnedInstrument, (read, now, copy) => Overlay.Over(read, i => i.Id, _ => true, now, copy));

    /// <summary>All of the changes or none; <see cref="TreeChanges.Undo"/> sent afterwards takes them back.</summary>
    public Task<Reply<Applied>> Apply(TreeChanges changes) =>
        Send(HttpMethod.Post, $"{Addresses.Vehicle(changes.VehicleId)}/changes", changes, Json.TreeChanges, Json.Applied);

    /// <summary>What the host says, with what waits here laid over it.</summary>
    /// <param name="begun">What is there of a vehicle that was begun here and that the host does not know yet.</param>
    internal async Task<Reply<T>> Laid<T>(string path, JsonTypeInfo<T> shape, Func<T, Lying, bool, T> over, Guid? vehicle = null, Func<Vehicle, T>? begun = null)
    {
        var reply = await Get(path, shape);
        if ((reply.Away || reply.Refusal is not null) && begun is not null && tray.Begun<Vehicle>(Addresses.Vehicle(vehicle!.Value)) is { } own) reply = new(begun(own), false, null);
        return reply.As(read => over(read, tray.Lying, reply.AsOf is not null));
    }

    internal async Task<Reply<Picture>> Picture(string id)
    {
        try
        {
            using var response = await http.GetAsync($"api/pictures/{id}");
            if (response.IsSuccessStatusCode)
                return new(new(id, response.Content.Headers.ContentType?.MediaType ?? "", await response.Content.ReadAsByteArrayAsync()), false, null);
            return (int)response.StatusCode >= 500 ? new(null, true, null) : new(null, false, "A picture that belongs to it is no longer kept.");
        }
        catch (Exception e) when (e is HttpRequestException or OperationCanceledException)
        {
            return new(null, true, null);
        }
    }

    internal Task<Reply<T>> Get<T>(string path, JsonTypeInfo<T> shape) => Answer(() => http.GetAsync(path), shape);

    internal Task<Reply<T>> Send<TBody, T>(HttpMethod method, string path, TBody body, JsonTypeInfo<TBody> bodyShape, JsonTypeInfo<T> shape) =>
        Send(method, path, JsonContent.Create(body, bodyShape), shape);

    internal Task<Reply<T>> Send<T>(HttpMethod method, string path, HttpContent content, JsonTypeInfo<T> shape) =>
        Answer(() => http.SendAsync(new HttpRequestMessage(method, path) { Content = content }), shape);

    async Task<Reply<T>> Answer<T>(Func<Task<HttpResponseMessage>> ask, JsonTypeInfo<T> shape)
    {
        try
        {
            using var response = await ask();
            var keptAt = response.Headers.TryGetValues(KeptAt, out var at) && DateTimeOffset.TryParse(at.First(), out var time) ? time : (DateTimeOffset?)null;
            if (response.IsSuccessStatusCode || response.StatusCode == HttpStatusCode.Conflict)
            {
                // Anybody may ask how pairing stands; that answer says nothing of this device.
                if (response.RequestMessage?.RequestUri?.AbsolutePath.StartsWith("/api/pairing", StringComparison.Ordinal) != true) Tell(null);
                var value = await response.Content.ReadFromJsonAsync(shape);
                standing.Heard(keptAt, response.Headers.Date);
                return new(value, false, null, keptAt);
            }
            // Too many at once is no refusal of what was sent.
            if ((int)response.StatusCode >= 500 || response.StatusCode == HttpStatusCode.TooManyRequests) return new(default, true, null);
            var refused = await response.Content.ReadFromJsonAsync(Json.Refused);
            if (response.StatusCode == HttpStatusCode.Unauthorized)
            {
                Tell(refused?.Refusal ?? "This device is not paired.");
                return new(default, true, null);
            }
            return new(default, false, refused?.Refusal ?? $"The host refused it ({(int)response.StatusCode}).");
        }
        catch (Exception e) when (e is HttpRequestException or JsonException or OperationCanceledException)
        {
            return new(default, true, null);
        }
    }

    /// <summary>The host knows this device from now on.</summary>
    internal void Paired() => Tell(null);

    void Tell(string? unpaired)
    {
        if (Unpaired == unpaired) return;
        Unpaired = unpaired;
        PairingChanged?.Invoke();
    }
}
