using System.Net;
using System.Text;
using System.Text.Json;
using WitnessMark.Stores;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Stores;
using WitnessMark.Web.Client.Wire;
using static WitnessMark.Web.Tests.Outbox.RowsOfEachKind;

namespace WitnessMark.Web.Tests.Outbox;

/// <summary>What waits is seen on every page, laid over what the host or a kept copy says.</summary>
[Truth(Grade.Property, "a row that waits is read as it was saved, at the version it was built on; the others stay as they were read")]
public class OverlayTests
{
    readonly HastyClock _clock = new();

    [Fact]
    public void A_vehicle_begun_with_no_network_opens_with_all_that_was_made_of_it() => OnePage.Run(async () =>
    {
        var tray = new Tray(new ListShelf(), new FlakyHost(new Random(1), 0) { Away = true }.Link(), _clock);
        foreach (var way in All.Values) Assert.Null(await way.Save(tray, 7, 0));
        foreach (var silent in new[] { HttpStatusCode.ServiceUnavailable, HttpStatusCode.NotFound })
        {
            var (server, desk) = Pages(tray, new(silent, """{"refusal":"There is no such vehicle."}"""));
            var tree = (await server.Tree(Van.Id)).Value!;
            Assert.Equal(("7", 0), (tree.Vehicle.Row.Notes, tree.Vehicle.Version));
            Assert.Equal(("Anchor plate 7", RearAxle.Id), (Assert.Single(tree.Parts).Row.Name, Assert.Single(tree.Assemblies).Row.Id));
            Assert.Equal(Old.Id, Assert.Single(tree.Samples).Row.Id);
            Assert.Equal(new(7, 8, 9), Assert.Single((await server.Jobs(Van.Id)).Value).Row.Hours);
            Assert.Equal(7, Assert.Single((await server.Milestones(Van.Id)).Value).Row.Weight);
            Assert.Equal(7, (await server.Means(Van.Id)).Value.Row.Benches);
            Assert.Equal(Make.Id, Assert.Single((await desk.Order(Van.Id)).Value.Row.InTurn));
            Assert.Empty((await desk.Hours(Van.Id)).Value!.Entries);
            // The borrowed part in somebody else's garage is measured there and then.
            var bench = (await server.Sample(Old.Id)).Value!;
            Assert.Equal((0, "plate 7"), (bench.Sketch.Version, bench.Sample.Row.Title));
        }
    });

    [Fact]
    public void A_part_renamed_here_is_seen_so_over_what_the_host_says_and_the_others_as_they_stand() => OnePage.Run(async () =>
    {
        var tray = new Tray(new ListShelf(), new FlakyHost(new Random(1), 0) { Away = true }.Link(), _clock);
        Assert.Null(await tray.Save(Plate with { Name = "Anchor plate, rear" }, 3));
        var other = Plate with { Id = Guid.NewGuid(), Name = "Anchor plate, front" };
        VehicleTree read = new(new(Van, 1), [new(Brakes, 1)], [new(RearAxle, 1)], [new(other, 2), new(Plate, 3)], []);
        var (server, _) = Pages(tray, new(HttpStatusCode.OK, JsonSerializer.Serialize(read, WireJson.Default.VehicleTree)));
        var tree = (await server.Tree(Van.Id)).Value!;
        Assert.Equal([("Anchor plate, front", 2), ("Anchor plate, rear", 3)], tree.Parts.Select(p => (p.Row.Name, p.Version)));
    });

    [Fact]
    public void Changes_go_to_the_host_at_once_by_way_of_the_tray_while_it_is_away_and_never_ahead_of_what_waits() => OnePage.Run(async () =>
    {
        var tray = new Tray(new ListShelf(), new FlakyHost(new Random(1), 0) { Away = true }.Link(), _clock);
        TreeChanges changes = new(Van.Id, [], [], [RowChange<Part>.To(new(Plate, 1), Plate with { Quantity = 2 })]);
        var there = new Told(HttpStatusCode.OK, """{"rows":1,"inTheWay":[]}""");
        Assert.Null(await TreeSaving.Apply(Pages(tray, there).Server, tray, changes));
        Assert.Equal((1, 0), (there.Asked, tray.Lying.Waiting));
        var (away, _) = Pages(tray, new(HttpStatusCode.ServiceUnavailable, ""));
        Assert.Contains("Only the host", await TreeSaving.Apply(away, tray, new(Van.Id, [], [], [new(Plate, null, 1)])));
        Assert.Equal(0, tray.Lying.Waiting);
        Assert.Null(await TreeSaving.Apply(away, tray, changes));
        Assert.Equal(1, tray.Lying.Waiting);
        // One that waits goes first: the host must not be told the second before the first.
        Assert.Null(await TreeSaving.Apply(Pages(tray, there).Server, tray, changes.Undo));
        Assert.Equal((1, 1), (there.Asked, tray.Lying.Waiting));
    });

    (Server Server, DeskServer Desk) Pages(Tray tray, Told host)
    {
        var server = new Server(new HttpClient(host) { BaseAddress = new("http://localhost/") }, new HostStanding(_clock), tray);
        return (server, new DeskServer(server, tray));
    }

    /// <summary>Says the same to everything.</summary>
    sealed class Told(HttpStatusCode status, string json) : HttpMessageHandler
    {
        public int Asked { get; private set; }

        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            Asked++;
            return Task.FromResult(new HttpResponseMessage(status) { RequestMessage = request, Content = new StringContent(json, Encoding.UTF8, "application/json") });
        }
    }
}
