using WitnessMark.Maths;
using WitnessMark.Stores.Intake;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Intake;

public sealed class ListIntakeTests
{
    const string Head = "system,assembly,part,reference,hand,quantity,condition\n";

    [Fact]
    [Truth(Grade.Property, "new systems, assemblies and parts stand once each, in the order they are first named")]
    public async Task A_list_makes_its_systems_and_assemblies()
    {
        var list = await Lists.Read(Head + "Springs,Rear,Leaf,S-1,,7,\nBODY,,Door,D-1,LH,1,\nSprings,rear,U bolt,S-2,,4,\nSprings,Front,Leaf,S-3,,5,\n", Lists.WithWing);
        var after = Lists.WithWing.After(ListIntake.Changes(list, Lists.WithWing));
        Assert.Equal([("Body", 0), ("Springs", 1)], after.Systems.Select(s => (s.Row.Name, s.Row.Order)));
        Assert.Equal([("Rear", 0), ("Front", 1)], after.Assemblies.Select(a => (a.Row.Name, a.Row.Order)));
        var rear = after.Assemblies[0].Row;
        Assert.Equal(["Leaf", "U bolt"], after.Parts.Where(p => p.Row.AssemblyId == rear.Id).Select(p => p.Row.Name));
        Assert.Equal(Lists.Body.Id, after.Parts.Single(p => p.Row.Name == "Door").Row.SystemId);
    }

    [Fact]
    [Truth(Grade.Property, "what the list says counts, what it leaves open stands; undone, everything is as it was")]
    public async Task A_part_that_stands_is_updated_and_the_update_undone()
    {
        var list = await Lists.Read(Head + "body,Front,wing,W-1b,LH,,\nBody,,Roof,,,1,\n", Lists.WithWing, new(InSystem: "Body"));
        var duplicate = Assert.Single(list.Duplicates);
        Assert.Equal((2, Lists.Wing.Id, DuplicateAnswer.Add), (duplicate.Line, duplicate.PartId!.Value, duplicate.Proposed));
        Assert.Contains("another reference", duplicate.Why);
        var changes = ListIntake.Changes(list, Lists.WithWing, new Dictionary<int, DuplicateAnswer> { [2] = DuplicateAnswer.Update });
        var after = Lists.WithWing.After(changes);
        var wing = after.Parts.Single(p => p.Row.Id == Lists.Wing.Id);
        Assert.Equal((Lists.Wing with { Reference = "W-1; W-1b", AssemblyId = after.Assemblies[0].Row.Id }, 4), (wing.Row, wing.Version));
        var back = after.After(changes.Undo);
        Assert.Equal(Lists.WithWing.Parts.Select(p => p.Row), back.Parts.Select(p => p.Row));
        Assert.Empty(back.Assemblies);
        Assert.Equal(after.Parts.Select(p => p.Row), back.After(changes.Undo.Undo with { Parts = [.. changes.Undo.Undo.Parts] }).Parts.Select(p => p.Row));
    }

    [Fact]
    [Truth(Grade.Property, "the same list read again changes nothing")]
    public async Task A_list_taken_in_again_is_skipped()
    {
        const string text = Head + "Springs,Rear,Leaf,S-1,,7,\nSprings,Rear,Leaf,S-1,,7,\nBody,,Wing,W-1,LH,1,split\n";
        var first = await Lists.Read(text, Lists.WithWing);
        Assert.Equal([(3, 2, DuplicateAnswer.Skip)], first.Duplicates.Where(d => d.EarlierLine is not null).Select(d => (d.Line, d.EarlierLine!.Value, d.Proposed)));
        var after = Lists.WithWing.After(ListIntake.Changes(first, Lists.WithWing));
        Assert.Equal(2, after.Parts.Length);
        var again = await Lists.Read(text, after);
        Assert.Equal(3, again.Duplicates.Length);
        Assert.Equal(0, ListIntake.Changes(again, after).Count);
    }

    [Fact]
    [Truth(Grade.Property, "bolts of one name with references of their own are all added; one reference under two names is shown")]
    public async Task Parts_of_one_name_are_told_apart_by_reference()
    {
        var list = await Lists.Read(Head + "Body,,Bolt,B-1,,4,\nBody,,Bolt,B-2,,2,\nBody,,Set screw,B-2,,2,\nBody,,Bolt,B-1,,4,\n");
        Assert.Equal([(3, DuplicateAnswer.Add), (4, DuplicateAnswer.Add), (5, DuplicateAnswer.Skip)], list.Duplicates.Select(d => (d.Line, d.Proposed)));
        var changes = ListIntake.Changes(list, Lists.Empty, new Dictionary<int, DuplicateAnswer> { [5] = DuplicateAnswer.Add });
        Assert.Equal(4, changes.Parts.Select(p => p.Row.Id).Distinct().Count());
        string Refused(int line, DuplicateAnswer answer) =>
            Assert.Throws<RefusedException>(() => ListIntake.Changes(list, Lists.Empty, new Dictionary<int, DuplicateAnswer> { [line] = answer })).Message;
        Assert.StartsWith("line 5", Refused(5, DuplicateAnswer.Update));
        Assert.Contains("line 2", Refused(2, DuplicateAnswer.Skip));
    }

    [Fact]
    [Truth(Grade.Property, "each of 5,000 rows becomes one change")]
    public async Task Five_thousand_parts_become_changes()
    {
        var text = Head + string.Concat(Enumerable.Range(0, 5000).Select(i => $"System {i % 12},Assembly {i % 90},Part {i},R-{i},,{1 + i % 4},as found\n"));
        var changes = ListIntake.Changes(await Lists.Read(text), Lists.Empty);
        Assert.Equal((5000, 12), (changes.Parts.Length, changes.Systems.Length));
    }
}
