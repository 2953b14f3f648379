using System.Collections.Immutable;
using System.Net.Http.Json;
using System.Text.Json.Serialization.Metadata;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Tests;

/// <summary>A vehicle with one part and one sample, put into a host's records through its own API.</summary>
public sealed record Bench(Guid Vehicle, Guid Part, Guid Sample)
{
    public string Address => $"vehicle/{Vehicle}/part/{Part}/sample/{Sample}";

    public static async Task<Bench> Lay(HttpClient http, string title = "Plate off the scrap chassis", params SketchedFeature[] features)
    {
        var bench = new Bench(Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid());
        var system = Guid.NewGuid();
        await Put(http, $"api/vehicles/{bench.Vehicle}", new(new Vehicle(bench.Vehicle, "Hartle van", "Hartle", "12 cwt", 1934, ""), 0), WireJson.Default.SavingVehicle);
        await Put(http, $"api/systems/{system}", new(new VehicleSystem(system, bench.Vehicle, "Body", 1), 0), WireJson.Default.SavingVehicleSystem);
        await Put(http, $"api/parts/{bench.Part}", new(new Part(bench.Part, system, "Floor plate", "H-12", Hand.None, 1, "rusted", null), 0), WireJson.Default.SavingPart);
        await Put(http, $"api/samples/{bench.Sample}", new(new PartSample(bench.Sample, bench.Part, title, SampleOrigin.TakenOff, null, []), 0), WireJson.Default.SavingPartSample);
        if (features.Length > 0)
            await Put(http, $"api/samples/{bench.Sample}/sketch", new(new SampleSketch(bench.Sample, [.. features]), 0), WireJson.Default.SavingSampleSketch);
        return bench;
    }

    public ReadingEntry Reading(string from, string to, string value, string kind = "centre distance", string instrument = "calliper") =>
        new(Guid.NewGuid(), Sample, kind, from, to, value, "", instrument, "", new DateTimeOffset(2026, 11, 25, 10, 0, 0, TimeSpan.Zero), "bench");

    public Task<HttpResponseMessage> Post(HttpClient http, params ReadingEntry[] readings) =>
        http.PostAsync($"api/samples/{Sample}/readings", JsonContent.Create([.. readings], WireJson.Default.ImmutableArrayReadingEntry));

    public async Task<ImmutableArray<ReadingEntry>> Standing(HttpClient http) =>
        [.. (await http.GetFromJsonAsync($"api/samples/{Sample}", WireJson.Default.BenchFile))!.History.Standing];

    static async Task Put<T>(HttpClient http, string path, T row, JsonTypeInfo<T> shape)
    {
        using var response = await http.PutAsync(path, JsonContent.Create(row, shape));
        response.EnsureSuccessStatusCode();
    }
}
