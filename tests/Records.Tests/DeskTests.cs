using Microsoft.Data.Sqlite;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores.ComingApart;
using WitnessMark.Stores.Orders;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

public sealed class DeskTests : RoomFile
{
    static readonly Firm Plater = new(new Guid(1, 0, 0, new byte[8]), Van.Id, "Plating shed", "plating", "", "");

    static readonly Order Ordered = new(
        new Guid(2, 0, 0, new byte[8]), Van.Id, Plater.Id, new(2031, 5, 4), new(2031, 6, 1), new(new(12.50m, "GBP"), new(2031, 5, 4)),
        [new(1, Bracket.Id, "bolt", 4, new(1.20m, "EUR"))], null, "");

    static CameOff Off(int n) => new(
        new Guid(n, 9, 0, new byte[8]), Van.Id, Bracket.Id, Noon, "phone", [], "T1", "bag 3",
        [new("bolt", "1/4 BSF", 19.05, "hexagon", 4, 3)], [new("under the foot", 0.5, 2)], "lug to the rear", "", "", []);

    [Fact]
    [Truth(Grade.Property, "a decision reads back as it was saved, and the second of two clashing savings gets the first")]
    public async Task Decisions_keep_the_rule_of_the_house()
    {
        var desk = (await Furnished()).Desk;
        await desk.Firms.Save(Plater, 0);
        Assert.False((await desk.Orders.Save(Ordered, 0)).Clash);
        Assert.False((await desk.Orders.Save(Ordered with { Notes = "rang them" }, 1)).Clash);
        var clash = await desk.Orders.Save(Ordered with { Notes = "called off" }, 1);
        Assert.Equal((true, "rang them", 2), (clash.Clash, clash.Standing.Row.Notes, clash.Standing.Version));
        var standing = Assert.Single(await desk.Orders.Of(Van.Id)).Row;
        Assert.Equal((Ordered.Deposit, Ordered.Expected, Ordered.Lines[0]), (standing.Deposit, standing.Expected, standing.Lines[0]));
        Assert.Empty(await desk.Orders.Of(Guid.NewGuid()));
        var early = await Assert.ThrowsAsync<RefusedException>(() => desk.Orders.Save(Ordered with { Expected = new(2031, 5, 1) }, 2));
        Assert.Contains("2031-05-01", early.Message);
    }

    [Fact]
    [Truth(Grade.Property, "facts are recorded once, refused when altered, and taken back by one more fact")]
    public async Task Facts_keep_the_rule_of_the_house()
    {
        var desk = (await Furnished()).Desk;
        Assert.Equal(2, await desk.CameOff.Append([Off(1), Off(2)]));
        Assert.Equal(0, await desk.CameOff.Append([Off(2)]));
        await Assert.ThrowsAsync<RefusedException>(() => desk.CameOff.Append([Off(3), Off(1) with { Bag = "bag 4" }]));
        await desk.TakenBack.Append([new(new Guid(5, 9, 0, new byte[8]), Van.Id, Off(1).Id, "the other bracket", Noon, "phone")]);
        var left = Assert.Single(await desk.CameOff.Of(Van.Id));
        Assert.Equal((Off(2).Id, Off(2).Fasteners[0], Off(2).Shims[0]), (left.Id, left.Fasteners[0], left.Shims[0]));
        Assert.Single(await desk.TakenBack.Of(Van.Id));
        await Assert.ThrowsAsync<RefusedException>(() => desk.CameOff.Append([Off(4) with { VehicleId = Guid.NewGuid() }]));

        await using var file = new SqliteConnection($"Data Source={PathOf("records.db")}");
        await file.OpenAsync();
        await using var command = file.CreateCommand();
        command.CommandText = "UPDATE kept_facts SET Text = '{}'";
        Assert.Contains("append-only", (await Assert.ThrowsAsync<SqliteException>(() => command.ExecuteNonQueryAsync())).Message);
    }

    [Fact]
    [Truth(Grade.Property, "hours belong to the vehicle of their job; a start stays open until an entry names it")]
    public async Task Hours_read_back()
    {
        var room = await Furnished();
        var job = Job.Plain(Guid.NewGuid(), Van.Id, Body.Id, Bracket.Id, "clean the bracket", WorkKind.Clean, new(1, 2, 3), Cost.None("GBP"));
        await room.Jobs.Save(job, 0);
        var start = new Started(Guid.NewGuid(), job.Id, Noon.AddYears(-20), "phone");
        await room.Hours.Append([start]);
        Assert.Equal(start, Assert.Single((await room.Hours.History(Van.Id)).Open));
        var entry = new HoursEntry(Guid.NewGuid(), job.Id, start.Id, Noon.AddYears(-20), 95, "wire brush", "phone");
        await room.Hours.Append([entry]);
        await room.Hours.Append([entry]);
        var history = await room.Hours.History(Van.Id);
        Assert.Empty(history.Open);
        Assert.Equal(entry, Assert.Single(history.Standing));
        await room.Hours.Withdraw([new(Guid.NewGuid(), entry.Id, "wrong job", Noon.AddYears(-20), "phone")]);
        Assert.Empty((await room.Hours.History(Van.Id)).Standing);
        // All of a list or none of it.
        await Assert.ThrowsAsync<RefusedException>(() => room.Hours.Append([entry with { Id = Guid.NewGuid() }, entry with { Id = Guid.NewGuid(), JobId = Guid.NewGuid() }]));
        Assert.Single((await room.Hours.History(Van.Id)).Entries);
        Assert.Equal(1, await room.Hours.Append([entry, entry with { Id = Guid.NewGuid(), Start = null }]));
    }

    [Fact]
    [Truth(Grade.Property, "the calendar reads back whole; the usual stands until one is saved")]
    public async Task The_calendar_reads_back()
    {
        var jobs = (await Furnished()).Jobs;
        Assert.Equal(0, (await jobs.Calendar()).Version);
        await jobs.Save(WorkCalendar.Usual with { Leave = [new(new(2031, 7, 1), new(2031, 7, 14), "away")] }, 0);
        var (kept, version) = await jobs.Calendar();
        Assert.Equal((1, new Leave(new(2031, 7, 1), new(2031, 7, 14), "away")), (version, kept.Leave[0]));
        Assert.Equal(WorkCalendar.Usual.Week.AsEnumerable(), kept.Week);
    }

    [Fact]
    [Truth(Grade.Property, "a picture is kept once under its content, and nothing else is taken for one")]
    public async Task Pictures_are_kept_by_their_content()
    {
        var pictures = (await Furnished()).Pictures;
        var png = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==");
        var id = await pictures.Keep(png);
        Assert.Equal(id, await pictures.Keep(png));
        var read = await pictures.Read(id);
        Assert.Equal("image/png", read!.MediaType);
        Assert.Equal(png, read.Bytes.ToArray());
        await Assert.ThrowsAsync<RefusedException>(() => pictures.Keep("hello"u8.ToArray()));
        Assert.Null(await pictures.Read("../records.db"));
    }
}
