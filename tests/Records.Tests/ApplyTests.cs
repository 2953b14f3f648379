using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Places;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

public sealed class ApplyTests : RoomFile
{
    static readonly VehicleSystem Doors = new(Guid.NewGuid(), Van.Id, "doors", 1);
    static readonly Assembly Latch = new(Guid.NewGuid(), Doors.Id, "latch", 0);
    static readonly Part Pawl = new(Guid.NewGuid(), Doors.Id, "pawl", "D-4", Hand.RH, 1, "", null, Latch.Id);

    /// <summary>A new system with an assembly and a part, and a part of before changed.</summary>
    static readonly TreeChanges Changes = new(Van.Id,
        [RowChange<VehicleSystem>.Add(Doors)], [RowChange<Assembly>.Add(Latch)],
        [RowChange<Part>.Add(Pawl), RowChange<Part>.To(new(Bracket, 1), Bracket with { Condition = "cleaned" })]);

    [Fact]
    [Truth(Grade.Property, "applied, everything is there; undone, all is as it was before, under later versions")]
    public async Task Changes_are_applied_and_taken_back()
    {
        var room = await Furnished();
        Assert.Equal(4, (await room.Vehicles.Apply(Changes)).Rows);
        var tree = (await room.Vehicles.Tree(Van.Id))!;
        Assert.Equal(new(Latch, 1), Assert.Single(tree.AssembliesOf(Doors.Id)));
        Assert.Equal(new(Pawl, 1), Assert.Single(tree.PartsOf(Doors.Id)));
        Assert.Equal(("cleaned", 2), (tree.PartsOf(Body.Id).Single().Row.Condition, tree.PartsOf(Body.Id).Single().Version));

        Assert.True((await room.Vehicles.Apply(Changes.Undo)).Done);
        var back = (await room.Vehicles.Tree(Van.Id))!;
        Assert.Equal((new(Bracket, 3), 1, 0), (Assert.Single(back.Parts), back.Systems.Length, back.Assemblies.Length));
    }

    [Fact]
    [Truth(Grade.Property, "what was changed meanwhile is named, and nothing at all is undone")]
    public async Task A_change_meanwhile_stands_in_the_way()
    {
        var room = await Furnished();
        await room.Vehicles.Apply(Changes);
        await room.Vehicles.Save(Bracket with { Condition = "primed" }, 2);
        var undone = await room.Vehicles.Apply(Changes.Undo);
        Assert.Equal("The part bracket LH was changed meanwhile (version 3 stands).", Assert.Single(undone.InTheWay));
        Assert.StartsWith("Nothing was changed", undone.Words);
        Assert.Equal(2, (await room.Vehicles.Tree(Van.Id))!.Parts.Length);
        Assert.Contains(" there already", (await room.Vehicles.Apply(Changes)).Words);
    }

    [Fact]
    [Truth(Grade.Property, "a row that carries something by now is not taken off")]
    public async Task What_carries_something_stays()
    {
        var room = await Furnished();
        await room.Vehicles.Apply(Changes);
        await room.Vehicles.Save(new Part(Guid.NewGuid(), Doors.Id, "hinge", "", Hand.None, 2, "", null), 0);
        await room.Vehicles.Save(Original with { Id = Guid.NewGuid(), PartId = Pawl.Id }, 0);
        await room.Jobs.Save(Job.Plain(Guid.NewGuid(), Van.Id, Doors.Id, Pawl.Id, "file the pawl", WorkKind.Make, new(1, 2, 3), Cost.None("GBP")), 0);
        await room.Desk.Moves.Append([new Moved(Guid.NewGuid(), Van.Id, Pawl.Id, null, "on the bench", Noon, "phone")]);
        var words = (await room.Vehicles.Apply(Changes.Undo)).InTheWay;
        Assert.Equal(4, words.Length);
        Assert.Contains("The part hinge was put into doors meanwhile.", words);
        Assert.Contains("The part pawl RH has the sample original.", words);
        Assert.Contains("The part pawl RH has the job file the pawl.", words);
        Assert.Contains("The part pawl RH has been noted elsewhere in the stores since.", words);
    }

    [Fact]
    [Truth(Grade.Property, "one bad row, and none is kept")]
    public async Task A_set_with_a_bad_row_is_refused_whole()
    {
        var room = await Furnished();
        async Task Refused(string word, TreeChanges changes) =>
            Assert.Contains(word, (await Assert.ThrowsAsync<RefusedException>(() => room.Vehicles.Apply(changes))).Message);
        await Refused("quantity", Changes with { Parts = [RowChange<Part>.Add(Pawl with { Quantity = 0 })] });
        await Refused("vehicle", Changes with { VehicleId = Guid.NewGuid() });
        await Refused("vehicle", Changes with { Systems = [] });
        await Refused("assembly of pawl", Changes with { Parts = [RowChange<Part>.Add(Pawl with { SystemId = Body.Id })] });
        await Refused("belongs to", Changes with { Assemblies = [] });
        await Refused("twice", Changes with { Parts = [Changes.Parts[0], Changes.Parts[0]] });
        await Refused("before and after", Changes with { Parts = [new(null, null, 0)] });
        await Refused("before and after", Changes with { Parts = default });
        Assert.Single((await room.Vehicles.Tree(Van.Id))!.Systems);
        await room.Vehicles.Apply(Changes);
        Assert.Contains("assembly of bracket", (await Assert.ThrowsAsync<RefusedException>(() => room.Vehicles.Save(Bracket with { AssemblyId = Latch.Id }, 2))).Message);
    }

    [Fact]
    [Truth(Grade.Property, "5,000 parts are kept within the 2 s asked for, on a machine that does other work beside; undone as well")]
    public async Task Five_thousand_parts_are_kept_at_once()
    {
        var room = await Furnished();
        var many = Changes with { Parts = [.. Enumerable.Range(0, 5000).Select(i => RowChange<Part>.Add(Pawl with { Id = new Guid(i, 1, 1, new byte[8]), Name = $"part {i}" }))] };
        var clock = System.Diagnostics.Stopwatch.StartNew();
        Assert.Equal(5002, (await room.Vehicles.Apply(many)).Rows);
        TestContext.Current.TestOutputHelper!.WriteLine($"kept in {clock.Elapsed.TotalSeconds:0.00} s");
        Assert.InRange(clock.Elapsed.TotalSeconds, 0, 6);
        Assert.True((await room.Vehicles.Apply(many.Undo)).Done);
        Assert.Single((await room.Vehicles.Tree(Van.Id))!.Parts);
    }

    [Fact]
    [Truth(Grade.Property, "jobs not kept yet are added, all or nothing; those kept stand as they are")]
    public async Task Jobs_are_added_in_one_go()
    {
        var room = await Furnished();
        Job Plain(string title) => Job.Plain(NamedId.Of(Van.Id, title), Van.Id, Body.Id, Bracket.Id, title, WorkKind.Clean, new(1, 2, 3), Cost.None("GBP"));
        Assert.Equal(2, await room.Jobs.Add([Plain("one"), Plain("two")]));
        await room.Jobs.Save(Plain("one") with { State = JobState.Done }, 1);
        Assert.Equal(1, await room.Jobs.Add([Plain("one"), Plain("three"), Plain("three")]));
        Assert.Equal(JobState.Done, (await room.Jobs.Jobs(Van.Id)).Single(j => j.Row.Title == "one").Row.State);
        await Assert.ThrowsAsync<RefusedException>(() => room.Jobs.Add([Plain("four"), Plain("five") with { Hours = new(3, 2, 1) }]));
        await Assert.ThrowsAsync<RefusedException>(() => room.Jobs.Add([Plain("four"), Plain("five") with { PartId = Guid.NewGuid() }]));
        Assert.Equal(3, (await room.Jobs.Jobs(Van.Id)).Length);
    }
}
