using CsCheck;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Notes;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Outbox;
using static WitnessMark.Web.Tests.Outbox.RowsOfEachKind;

namespace WitnessMark.Web.Tests.Outbox;

/// <summary>The tree, the plan, the shop and the calendar wait in the tray as every other decision does.</summary>
[Truth(Grade.Property, "optimistic versions: a save on an older version changes nothing; a row is taken only when what it belongs to stands")]
public class DecisionTests
{
    readonly HastyClock _clock = new();

    public static TheoryData<string> Kinds => [.. All.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Over_any_losses_the_last_saving_of_one_device_stands_and_never_clashes(string kind) =>
        Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Double[0, 0.7], Gen.Int[1, 12]).Sample((seed, loss, changes) => OnePage.Run(async () =>
        {
            var (host, shelf, way) = (new FlakyHost(new Random(seed), loss), new ListShelf(), All[kind]);
            var tray = Page(shelf, host);
            for (var i = 1; i <= changes; i++)
                Assert.Null(await way.Save(tray, i, tray.Lying.Decisions.Values.FirstOrDefault()?.BasedOn ?? host.Versions(way.Address).Count));
            await Idle(tray);
            Assert.Equal(0, tray.Lying.NeedYou);
            Assert.Equal(await Text(way, changes), host.Versions(way.Address)[^1]);
        }), iter: 12, threads: 1);

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Two_devices_away_both_keep_theirs_and_nothing_is_overwritten(string kind) => OnePage.Run(async () =>
    {
        var (host, way) = (new FlakyHost(new Random(1), 0), All[kind]);
        var (one, other) = (Page(new ListShelf(), host), Page(new ListShelf(), host));
        Assert.Null(await way.Save(one, 1, 0));
        await Idle(one);
        host.Away = true;
        Assert.Null(await way.Save(one, 2, 1));
        Assert.Null(await way.Save(other, 3, 1));
        host.Away = false;
        one.Wake();
        await Idle(one);
        other.Wake();
        await Idle(other);
        Assert.Equal(2, host.Versions(way.Address).Count);
        var second = Assert.Single(new[] { one, other }, t => t.Lying.NeedYou == 1);
        var clash = Assert.Single(second.Lying.Decisions.Values);
        Assert.Equal((kind, way.Address), (clash.Kind, clash.Address));
        Assert.Equal(host.Versions(way.Address)[^1], clash.Theirs);
        await second.KeepMine(clash.Address);
        await Idle(second);
        Assert.Equal(clash.Text, host.Versions(way.Address)[^1]);
    });

    [Fact]
    public void What_was_begun_with_no_network_goes_once_each_after_what_it_stands_on() =>
        Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Double[0, 0.7]).Sample((seed, loss) => OnePage.Run(async () =>
        {
            var chance = new Random(seed);
            var host = new FlakyHost(chance, loss) { Away = true };
            host.Refuses = text => Orphan(host, text);
            var shelf = new ListShelf();
            var tray = Page(shelf, host);
            // In any order: a person does not think of keys.
            foreach (var way in All.Values.OrderBy(_ => chance.Next())) Assert.Null(await way.Save(tray, 1, 0));
            Assert.Null(await tray.Append(new HoursEntry(tray.NewId(), Make.Id, null, _clock.GetUtcNow(), 45, "", "phone")));
            Assert.Null(await tray.Append(new ReadingEntry(tray.NewId(), Old.Id, "distance", "H1", "H2", "58.2", "", "calliper", "", _clock.GetUtcNow(), "phone")));
            Assert.Null(await tray.Append(new Note(tray.NewId(), Van.Id, Plate.Id, "cracked at the lug", _clock.GetUtcNow(), "phone")));
            host.Away = false;
            // The page is closed and opened again while it sends.
            tray = Page(shelf, host);
            await tray.Open();
            await Idle(tray);
            Assert.Equal(0, tray.Lying.NeedYou);
            Assert.All(All.Values, way => Assert.Single(host.Versions(way.Address)));
            Assert.Equal(3, host.Recorded.Count);
        }), iter: 40, threads: 1);

    [Fact]
    public void Hours_kept_while_away_go_in_one_sending() => OnePage.Run(async () =>
    {
        var host = new FlakyHost(new Random(1), 0) { Away = true };
        var tray = Page(new ListShelf(), host);
        for (var i = 1; i <= 40; i++) Assert.Null(await tray.Append(new HoursEntry(tray.NewId(), Make.Id, null, _clock.GetUtcNow(), i, "", "phone")));
        host.Away = false;
        var asked = host.Asked;
        tray.Wake();
        await Idle(tray);
        Assert.Equal(40, host.Recorded.Count);
        Assert.InRange(host.Asked - asked, 1, 3);
    });

    [Fact]
    public void Decisions_of_every_kind_are_handed_over_as_a_file_and_stand_once_whichever_way_they_come() => OnePage.Run(async () =>
    {
        var host = new FlakyHost(new Random(1), 0) { Away = true };
        var (phone, desk) = (Page(new ListShelf(), host), Page(new ListShelf(), host));
        foreach (var way in All.Values) Assert.Null(await way.Save(phone, 1, 0));
        var file = await phone.HandOver("phone");
        host.Away = false;
        Assert.Equal(All.Count, await desk.TakeIn(file));
        await Idle(desk);
        phone.Wake();
        await Idle(phone);
        Assert.All(All.Values, way => Assert.Single(host.Versions(way.Address)));
        Assert.Equal((0, 0), (phone.Lying.NeedYou, desk.Lying.NeedYou));
        await Assert.ThrowsAsync<Maths.RefusedException>(() => desk.TakeIn(file.Replace("api/shop", "api/demo")));
    });

    [Fact]
    public void A_set_of_changes_is_kept_whole_or_not_at_all() => OnePage.Run(async () =>
    {
        var host = new FlakyHost(new Random(1), 0) { Away = true };
        var shelf = new ListShelf();
        var tray = Page(shelf, host);
        TreeChanges changes = new(Van.Id, [RowChange<VehicleSystem>.Add(Brakes)], [], [RowChange<Part>.Add(Plate), RowChange<Part>.Add(Plate with { Id = Guid.NewGuid(), Name = "" })]);
        Assert.Contains("part name", await tray.Save(changes));
        Assert.Empty(shelf.Lies.Decisions);
        shelf.Full = true;
        Assert.Equal("There is no room.", await tray.Save(changes with { Parts = [changes.Parts[0]] }));
        Assert.Empty(shelf.Lies.Decisions);
        shelf.Full = false;
        Assert.Null(await tray.Save(changes with { Parts = [changes.Parts[0]] }));
        Assert.Equal(2, shelf.Lies.Decisions.Count);
    });

    Tray Page(ListShelf shelf, FlakyHost host) => new(shelf, host.Link(), _clock);

    /// <summary>The row as it travels.</summary>
    async Task<string> Text(Way way, int n)
    {
        var shelf = new ListShelf();
        await way.Save(Page(shelf, new FlakyHost(new Random(1), 0) { Away = true }), n, 0);
        return Assert.Single(shelf.Lies.Decisions.Values).Text;
    }

    static async Task Idle(Tray tray)
    {
        await tray.Send();
        while (tray.Lying.Waiting > 0) await Task.Yield();
    }
}
