using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

public sealed class DecisionTests : RoomFile
{
    [Fact]
    [Truth(Grade.Property, "what is read back is what was saved")]
    public async Task The_tree_reads_back_as_saved()
    {
        await Furnished();
        var tree = (await (await RecordRoom.Open(PathOf("records.db"))).Vehicles.Tree(Van.Id))!;
        Assert.Equal(new(Van, 1), tree.Vehicle);
        Assert.Equal(new(Body, 1), Assert.Single(tree.Systems));
        Assert.Equal(new(Bracket, 1), Assert.Single(tree.PartsOf(Body.Id)));
        var sample = Assert.Single(tree.SamplesOf(Bracket.Id)).Row;
        Assert.Equal(Original with { Wanted = sample.Wanted }, sample);
        Assert.Equal(Original.Wanted, sample.Wanted.AsEnumerable());
        Assert.Null(await (await RecordRoom.Open(PathOf("records.db"))).Vehicles.Tree(Guid.Empty));
    }

    [Fact]
    [Truth(Grade.Property, "the second of two changes built on one version is told, and the first stands")]
    public async Task A_clash_is_told_and_nothing_overwritten()
    {
        var room = await Furnished();
        var mine = await room.Vehicles.Save(Bracket with { Condition = "mine" }, 1);
        Assert.Equal((2, false), (mine.Standing.Version, mine.Clash));
        var yours = await room.Vehicles.Save(Bracket with { Condition = "yours" }, 1);
        Assert.True(yours.Clash);
        Assert.Equal(("mine", 2), (yours.Standing.Row.Condition, yours.Standing.Version));
        Assert.Contains("Not saved", yours.Words);
        Assert.Equal("mine", (await room.Vehicles.Part(Bracket.Id))!.Value.Row.Condition);
        Assert.True((await room.Vehicles.Save(Bracket with { Name = "other" }, 0)).Clash);
    }

    [Fact]
    [Truth(Grade.Property, "a saving whose answer was lost may be sent again")]
    public async Task Saving_again_what_stands_is_no_clash()
    {
        var room = await Furnished();
        Assert.False((await room.Vehicles.Save(Original, 0)).Clash);
        var changed = Bracket with { Condition = "sound" };
        await room.Vehicles.Save(changed, 1);
        var again = await room.Vehicles.Save(changed, 1);
        Assert.Equal((2, false), (again.Standing.Version, again.Clash));
    }

    [Fact]
    [Truth(Grade.Property, "many writers at once: exactly one wins each version")]
    public async Task Of_many_at_once_one_wins()
    {
        var room = await Furnished();
        var saved = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => Task.Run(() => room.Vehicles.Save(Bracket with { Condition = $"by {i}" }, 1))));
        var winner = Assert.Single(saved, s => !s.Clash);
        Assert.All(saved, s => Assert.Equal(winner.Standing, s.Standing));
    }

    [Fact]
    [Truth(Grade.Property, "bad rows are refused in words and nothing is kept of them")]
    public async Task Bad_rows_are_refused_and_not_kept()
    {
        var room = await Furnished();
        async Task Refused(string word, Func<Task> saving) =>
            Assert.Contains(word, (await Assert.ThrowsAsync<RefusedException>(saving)).Message);
        await Refused("quantity", () => room.Vehicles.Save(Bracket with { Id = Guid.NewGuid(), Quantity = 0 }, 0));
        await Refused("saved first", () => room.Vehicles.Save(Bracket with { Id = Guid.NewGuid(), SystemId = Guid.NewGuid() }, 0));
        await Refused("version", () => room.Vehicles.Save(Bracket, -1));
        await Refused("no such row", () => room.Vehicles.Save(Bracket with { Id = Guid.NewGuid() }, 3));
        await Refused("lender", () => room.Vehicles.Save(Original with { Id = Guid.NewGuid(), Loan = null }, 0));
        Assert.Single((await room.Vehicles.Tree(Van.Id))!.Parts);
        Assert.Single((await room.Vehicles.Tree(Van.Id))!.Samples);
    }

    [Fact]
    [Truth(Grade.Property, "a folded part reads back to the letter; a clash is told; taken back, its version goes on")]
    public async Task A_folded_part_reads_back_as_typed()
    {
        var room = await Furnished();
        Assert.Null(await room.Bench.Folded(Original.Id));
        var typed = new FoldedPart(Original.Id, "{ \"title\": \"Bügel, 3 1/4\\\"\",\r\n\t half-typed ");
        await room.Bench.Save(typed, 0);
        Assert.Equal(new(typed, 1), await (await RecordRoom.Open(PathOf("records.db"))).Bench.Folded(Original.Id));
        Assert.Equal(new(new(typed, 1), Clash: true), await room.Bench.Save(typed with { Text = "{ other }" }, 0));
        Assert.False((await room.Bench.Save(typed, 0)).Clash);
        Assert.Equal(2, (await room.Bench.Save(typed with { Text = null }, 1)).Standing.Version);
        Assert.True((await room.Bench.Save(typed with { Text = "{ late }" }, 1)).Clash);
        Assert.Equal(new(new(Original.Id, null), 2), await room.Bench.Folded(Original.Id));
        await Assert.ThrowsAsync<RefusedException>(() => room.Bench.Save(typed with { Text = "" }, 2));
        await Assert.ThrowsAsync<RefusedException>(() => room.Bench.Save(typed with { Id = Guid.NewGuid() }, 0));
    }

    [Fact]
    [Truth(Grade.Property, "sketches, instruments, jobs and the shop keep the same rule")]
    public async Task Sketch_instruments_jobs_and_shop_read_back()
    {
        var room = await Furnished();
        var sketch = new SampleSketch(Original.Id, [new("H1", "hole", "", "", 10, 20, null, 6.5, null)]);
        await room.Bench.Save(sketch, 0);
        Assert.Equal(sketch.Features, (await room.Bench.Sketch(Original.Id))!.Value.Row.Features.AsEnumerable());
        Assert.True((await room.Bench.Save(new SampleSketch(Original.Id, []), 0)).Clash);

        await room.Bench.Save(new OwnedInstrument(Guid.NewGuid(), "calliper", 0.02, 0.03, 0.01, false), 0);
        await Assert.ThrowsAsync<RefusedException>(() => room.Bench.Save(new OwnedInstrument(Guid.NewGuid(), "calliper", 0.1, 0, 0, false), 0));
        Assert.Single(await room.Bench.Instruments());

        var card = TurnedRoute.Card(new("pin", "mild steel", 7850, 8, 40, 0, 1, []), Shop.Usual);
        await room.Jobs.Save(Job.Of(Guid.NewGuid(), Van.Id, Bracket.SystemId, Bracket.Id, card), 0);
        var job = Assert.Single(await room.Jobs.Jobs(Van.Id)).Row;
        Assert.Equal((card.Hours, card.Cost, card.Steps.Length), (job.Hours, job.Cost, job.Card!.Steps.Length));
        Assert.Equal(card.Steps[0].SentOut, job.Card.Steps[0].SentOut);

        var shop = await room.Jobs.Shop();
        Assert.Equal(0, shop.Version);
        await room.Jobs.Save(shop.Row with { Folder = null }, 0);
        var kept = await room.Jobs.Shop();
        Assert.Equal((1, null), (kept.Version, kept.Row.Folder));
        Assert.Equal(Shop.Usual.Prices.MaterialPerKilogram("MILD steel"), kept.Row.Prices.MaterialPerKilogram("Mild Steel"));
        await Assert.ThrowsAsync<RefusedException>(() => room.Jobs.Save(shop.Row with { Currency = "pounds" }, 1));
    }
}
