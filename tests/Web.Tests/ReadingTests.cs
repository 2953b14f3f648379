using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using CsCheck;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Tests;

public sealed class ReadingTests(RunningHost running) : IClassFixture<RunningHost>
{
    HttpClient Http => running.Host.Http;

    [Fact]
    public async Task A_reading_sent_again_is_recorded_once()
    {
        var bench = await Bench.Lay(Http);
        var reading = bench.Reading("H1", "H2", "3 5/16\"");
        for (var i = 0; i < 3; i++) (await bench.Post(Http, reading)).EnsureSuccessStatusCode();
        Assert.Equal([reading], await bench.Standing(Http));
    }

    [Fact]
    public async Task The_same_id_with_other_words_is_refused_and_the_first_stands()
    {
        var bench = await Bench.Lay(Http);
        var reading = bench.Reading("H1", "H2", "31.5");
        (await bench.Post(Http, reading)).EnsureSuccessStatusCode();
        var again = await bench.Post(Http, reading with { Value = "31.6" });
        Assert.Equal(HttpStatusCode.BadRequest, again.StatusCode);
        Assert.Equal([reading], await bench.Standing(Http));
    }

    [Fact]
    public async Task One_bad_row_keeps_all_rows_out()
    {
        var bench = await Bench.Lay(Http);
        var response = await bench.Post(Http, bench.Reading("H1", "H2", "31.5"), bench.Reading("", "H2", "31.5"));
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Contains("from", (await response.Content.ReadFromJsonAsync(WireJson.Default.Refused))!.Refusal);
        Assert.Empty(await bench.Standing(Http));
    }

    [Fact]
    public async Task A_killed_host_has_all_it_acknowledged()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http);
        var acknowledged = new List<ReadingEntry>();
        var writing = Task.Run(async () =>
        {
            try
            {
                for (var i = 0; ; i++)
                {
                    var reading = bench.Reading("H1", "H2", $"{i}");
                    if ((await bench.Post(host.Http, reading)).IsSuccessStatusCode) acknowledged.Add(reading);
                }
            }
            catch (HttpRequestException)
            {
                // The host is gone: what was not acknowledged is not counted.
            }
        });
        while (acknowledged.Count < 20) await Task.Delay(5);
        await host.Kill();
        await writing;
        await host.Restart();
        var standing = await bench.Standing(host.Http);
        Assert.Equal(acknowledged, standing[..acknowledged.Count]);
        Assert.InRange(standing.Length, acknowledged.Count, acknowledged.Count + 1);
    }

    [Fact]
    public async Task A_sketch_built_on_an_older_one_is_told_and_overwrites_nothing()
    {
        var bench = await Bench.Lay(Http, features: Hole("H1", 10));
        var mine = new Saving<SampleSketch>(new(bench.Sample, [Hole("H1", 30)]), 0);
        var response = await Http.PutAsync($"api/samples/{bench.Sample}/sketch", JsonContent.Create(mine, WireJson.Default.SavingSampleSketch));
        Assert.Equal(HttpStatusCode.Conflict, response.StatusCode);
        var standing = (await response.Content.ReadFromJsonAsync(WireJson.Default.SavedSampleSketch)).Standing;
        Assert.Equal((1, 10), (standing.Version, standing.Row.Features[0].X));
    }

    [Fact]
    public async Task A_folded_part_comes_back_as_typed_and_an_older_one_overwrites_nothing()
    {
        var bench = await Bench.Lay(Http);
        Assert.Equal(new(new(bench.Sample, null), 0), await Folded());
        (await Put("{ half-typed", 0)).EnsureSuccessStatusCode();
        Assert.Equal(new(new(bench.Sample, "{ half-typed"), 1), await Folded());
        var late = await Put("{ late", 0);
        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        Assert.Equal("{ half-typed", (await late.Content.ReadFromJsonAsync(WireJson.Default.SavedFoldedPart)).Standing.Row.Text);
        foreach (var bad in new[] { "", new string('x', Stores.Check.LargestFolded + 1) })
        {
            var refused = await Put(bad, 1);
            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
            Assert.Contains("folded part", (await refused.Content.ReadFromJsonAsync(WireJson.Default.Refused))!.Refusal);
        }
        (await Put(null, 1)).EnsureSuccessStatusCode();
        Assert.Equal(new(new(bench.Sample, null), 2), await Folded());

        Task<HttpResponseMessage> Put(string? text, int basedOn) =>
            Http.PutAsync($"api/samples/{bench.Sample}/folded", JsonContent.Create(new(new(bench.Sample, text), basedOn), WireJson.Default.SavingFoldedPart));
        async Task<Versioned<FoldedPart>> Folded() => (await Http.GetFromJsonAsync($"api/samples/{bench.Sample}", WireJson.Default.BenchFile))!.Folded;
    }

    [Fact]
    public async Task The_shop_comes_back_as_it_was_sent()
    {
        var usual = await Http.GetFromJsonAsync("api/shop", WireJson.Default.VersionedShop);
        var edited = usual.Row with { Name = "the lean-to", Drill = new Drill("pillar drill", 16) };
        var saved = await Http.PutAsync("api/shop", JsonContent.Create(new(edited, usual.Version), WireJson.Default.SavingShop));
        saved.EnsureSuccessStatusCode();
        var back = await Http.GetFromJsonAsync("api/shop", WireJson.Default.VersionedShop);
        Assert.Equal(JsonSerializer.Serialize(edited, WireJson.Default.Shop), JsonSerializer.Serialize(back.Row, WireJson.Default.Shop));
    }

    [Fact]
    public async Task Too_much_at_once_is_refused_in_a_sentence()
    {
        var bench = await Bench.Lay(Http);
        // Asking first (RFC 9110, 10.1.1): the host answers before the body is sent, and closes.
        var request = new HttpRequestMessage(HttpMethod.Post, $"api/samples/{bench.Sample}/readings") { Content = new StringContent(new string('x', 3 << 20), Encoding.UTF8, "application/json") };
        request.Headers.ExpectContinue = true;
        var response = await Http.SendAsync(request);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, response.StatusCode);
        Assert.Contains("too large", await response.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Whatever_is_sent_is_refused_in_a_sentence_or_recorded_whole()
    {
        var bench = await Bench.Lay(Http);
        var good = JsonSerializer.Serialize([bench.Reading("H1", "H2", "31.5")], WireJson.Default.ImmutableArrayReadingEntry);
        var broken = Gen.Select(Gen.Int[0, good.Length - 1], Gen.Int[0, 8], Gen.String[0, 4]).Select((at, cut, put) => good[..at] + put + good[Math.Min(at + cut, good.Length)..]);
        await broken.SampleAsync(async text =>
        {
            var response = await Http.PostAsync($"api/samples/{bench.Sample}/readings", new StringContent(text, Encoding.UTF8, "application/json"));
            Assert.True((int)response.StatusCode is 200 or 400, $"{(int)response.StatusCode} for {text}");
            if (!response.IsSuccessStatusCode) Assert.Contains("refusal", await response.Content.ReadAsStringAsync());
        }, iter: 150, threads: 1);
    }

    static SketchedFeature Hole(string id, double x) => new(id, "hole", "", "", x, 0, null, null, null);
}
