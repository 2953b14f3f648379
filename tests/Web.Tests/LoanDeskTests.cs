using System.Collections.Immutable;
using System.Net;
using System.Net.Http.Json;
using WitnessMark.Stores;
using WitnessMark.Stores.Intentions;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Loans;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Tests;

[Truth(Grade.Property, "what is sent is what is read back; a stale version is told of the row that stands; a bad row is refused whole")]
public sealed class LoanDeskTests(RunningHost running) : IClassFixture<RunningHost>
{
    HttpClient Http => running.Host.Http;

    [Fact]
    public async Task What_is_left_open_is_kept_under_a_version()
    {
        var bench = await Bench.Lay(Http);
        var row = new NotNeeded(Guid.NewGuid(), bench.Vehicle, bench.Sample, "loose|h6", "H6 is not held.", "it is not used on ours", false);
        Assert.Equal(HttpStatusCode.OK, (await Put(row, 0)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Put(row with { Reason = "another" }, 0)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Put(row with { Dropped = true }, 1)).StatusCode);
        Assert.Equal([new Versioned<NotNeeded>(row with { Dropped = true }, 2)], await Rows<NotNeeded>(bench.Vehicle));
    }

    [Fact]
    public async Task A_point_left_without_a_reason_is_refused()
    {
        var bench = await Bench.Lay(Http);
        var response = await Put(new NotNeeded(Guid.NewGuid(), bench.Vehicle, bench.Sample, "photograph", "", "  ", false), 0);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Contains("reason", (await response.Content.ReadFromJsonAsync(WireJson.Default.Refused))!.Refusal);
        Assert.Empty(await Rows<NotNeeded>(bench.Vehicle));
    }

    [Fact]
    public async Task What_is_refused_and_forced_of_a_plan_is_kept_and_never_both()
    {
        var bench = await Bench.Lay(Http);
        var row = new IntentChoices(bench.Sample, bench.Vehicle, ["equal:H1,H2"], ["round:H3"]);
        Assert.Equal(HttpStatusCode.OK, (await Put(row, 0)).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await Put(row with { Forced = row.Refused }, 1)).StatusCode);
        var kept = Assert.Single(await Rows<IntentChoices>(bench.Vehicle));
        Assert.Equal((1, row.Id), (kept.Version, kept.Row.Id));
        Assert.Equal([.. row.Refused, .. row.Forced], kept.Row.Refused.AddRange(kept.Row.Forced));
    }

    [Fact]
    public async Task A_worn_feature_is_kept_as_marked_and_a_sketch_of_older_days_is_still_read()
    {
        var bench = await Bench.Lay(Http, "Plate with a worn hole", new SketchedFeature("H1", "hole", "", "", 0, 0, null, null, null) { Condition = "worn", Wear = 0.3 });
        var hole = (await Http.GetFromJsonAsync($"api/samples/{bench.Sample}", WireJson.Default.BenchFile))!.Sketch.Row.Features.Single();
        Assert.Equal(("worn", 0.3), (hole.Condition, hole.Wear));
        const string older = """{"row":{"id":"ID","features":[{"id":"H1","kind":"hole","from":"","to":"","x":0,"y":0,"turn":null,"size":null,"length":null}]},"basedOn":1}""";
        using var body = new StringContent(older.Replace("ID", $"{bench.Sample}", StringComparison.Ordinal), System.Text.Encoding.UTF8, "application/json");
        Assert.Equal(HttpStatusCode.OK, (await Http.PutAsync($"api/samples/{bench.Sample}/sketch", body)).StatusCode);
        Assert.Null((await Http.GetFromJsonAsync($"api/samples/{bench.Sample}", WireJson.Default.BenchFile))!.Sketch.Row.Features.Single().Condition);
    }

    Task<HttpResponseMessage> Put<T>(T row, int basedOn) where T : IDecision =>
        Http.PutAsync($"api/vehicles/{row.VehicleId}/desk/{typeof(T).Name}/{row.Id}", JsonContent.Create(new Saving<T>(row, basedOn), DeskJson.Of<Saving<T>>()));

    Task<ImmutableArray<Versioned<T>>> Rows<T>(Guid vehicle) where T : IDecision =>
        Http.GetFromJsonAsync($"api/vehicles/{vehicle}/desk/{typeof(T).Name}", DeskJson.Of<ImmutableArray<Versioned<T>>>());
}
