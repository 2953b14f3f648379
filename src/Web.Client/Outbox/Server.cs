using System.Collections.Immutable;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
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

/// <summary>The host's records over HTTP.</summary>
public sealed class Server(HttpClient http, HostStanding standing)
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

    public Task<Reply<ImmutableArray<Versioned<Vehicle>>>> Vehicles() => Get("api/vehicles", Json.ImmutableArrayVersionedVehicle);

    public Task<Reply<VehicleTree>> Tree(Guid vehicle) => Get($"api/vehicles/{vehicle}", Json.VehicleTree);

    public Task<Reply<BenchFile>> Sample(Guid sample) => Get($"api/samples/{sample}", Json.BenchFile);

    public Task<Reply<Saved<Part>>> Save(Part part, int basedOn) =>
        Send(HttpMethod.Put, $"api/parts/{part.Id}", new(part, basedOn), Json.SavingPart, Json.SavedPart);

    public Task<Reply<Saved<PartSample>>> Save(PartSample sample, int basedOn) =>
        Send(HttpMethod.Put, $"api/samples/{sample.Id}", new(sample, basedOn), Json.SavingPartSample, Json.SavedPartSample);

    public Task<Reply<Saved<Vehicle>>> Save(Vehicle vehicle, int basedOn) =>
        Send(HttpMethod.Put, $"api/vehicles/{vehicle.Id}", new(vehicle, basedOn), Json.SavingVehicle, Json.SavedVehicle);

    public Task<Reply<Saved<VehicleSystem>>> Save(VehicleSystem system, int basedOn) =>
        Send(HttpMethod.Put, $"api/systems/{system.Id}", new(system, basedOn), Json.SavingVehicleSystem, Json.SavedVehicleSystem);

    public Task<Reply<Saved<Assembly>>> Save(Assembly assembly, int basedOn) =>
        Send(HttpMethod.Put, $"api/assemblies/{assembly.Id}", new(assembly, basedOn), Json.SavingAssembly, Json.SavedAssembly);

    /// <summary>All of the changes or none; <see cref="TreeChanges.Undo"/> sent afterwards takes them back.</summary>
    public Task<Reply<Applied>> Apply(TreeChanges changes) =>
        Send(HttpMethod.Post, $"api/vehicles/{changes.VehicleId}/changes", changes, Json.TreeChanges, Json.Applied);

    public Task<Reply<ImmutableArray<Versioned<Job>>>> Jobs(Guid vehicle) => Get($"api/vehicles/{vehicle}/jobs", Json.ImmutableArrayVersionedJob);

    public Task<Reply<Saved<Job>>> Save(Job job, int basedOn) =>
        Send(HttpMethod.Put, $"api/jobs/{job.Id}", new(job, basedOn), Json.SavingJob, Json.SavedJob);

    public Task<Reply<ImmutableArray<Versioned<Milestone>>>> Milestones(Guid vehicle) => Get($"api/vehicles/{vehicle}/milestones", Json.ImmutableArrayVersionedMilestone);

    public Task<Reply<Saved<Milestone>>> Save(Milestone milestone, int basedOn) =>
        Send(HttpMethod.Put, $"api/milestones/{milestone.Id}", new(milestone, basedOn), Json.SavingMilestone, Json.SavedMilestone);

    public Task<Reply<Versioned<Means>>> Means(Guid vehicle) => Get($"api/vehicles/{vehicle}/means", Json.VersionedMeans);

    public Task<Reply<Saved<Means>>> Save(Means means, int basedOn) =>
        Send(HttpMethod.Put, $"api/vehicles/{means.Id}/means", new(means, basedOn), Json.SavingMeans, Json.SavedMeans);

    public Task<Reply<Versioned<Shop>>> Shop() => Get("api/shop", Json.VersionedShop);

    public Task<Reply<Saved<Shop>>> Save(Shop shop, int basedOn) =>
        Send(HttpMethod.Put, "api/shop", new(shop, basedOn), Json.SavingShop, Json.SavedShop);

    public Task<Reply<ImmutableArray<Versioned<OwnedInstrument>>>> Instruments() => Get("api/instruments", Json.ImmutableArrayVersionedOwnedInstrument);

    public Task<Reply<Saved<OwnedInstrument>>> Save(OwnedInstrument instrument, int basedOn) =>
        Send(HttpMethod.Put, $"api/instruments/{instrument.Id}", new(instrument, basedOn), Json.SavingOwnedInstrument, Json.SavedOwnedInstrument);

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
