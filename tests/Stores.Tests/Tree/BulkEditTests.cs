using WitnessMark.Maths;
using WitnessMark.Stores.Tests.Intake;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Tree;

public sealed class BulkEditTests
{
    static readonly VehicleSystem Doors = new(NamedId.Of(Lists.Van.Id, "Doors"), Lists.Van.Id, "Doors", 1);
    static readonly Assembly Front = new(NamedId.Of(Lists.Body.Id, "Front"), Lists.Body.Id, "Front", 0);
    static readonly Part Roof = new(NamedId.Of(Lists.Body.Id, "Roof"), Lists.Body.Id, "Roof", "", Hand.None, 1, "sound", null, Front.Id);

    static readonly VehicleTree Tree = Lists.WithWing with
    {
        Systems = [.. Lists.WithWing.Systems, new(Doors, 1)],
        Assemblies = [new(Front, 1)],
        Parts = [.. Lists.WithWing.Parts, new(Roof, 5)],
    };

    [Fact]
    [Truth(Grade.Property, "only parts that become different are changed, each under its own version; undone, all is as it was")]
    public void The_same_is_set_on_many_parts()
    {
        var changes = BulkEdit.Changes(Tree, [Lists.Wing.Id, Roof.Id, Roof.Id], new(Condition: "sound", AssemblyId: Front.Id));
        Assert.Equal((Lists.Wing with { Condition = "sound", AssemblyId = Front.Id }, 3), (Assert.Single(changes.Parts).After, changes.Parts[0].BasedOn));
        Assert.Equal(Tree.Parts.Select(p => p.Row).ToHashSet(), [.. Tree.After(changes).After(changes.Undo).Parts.Select(p => p.Row)]);
    }

    [Fact]
    [Truth(Grade.Property, "an assembly belongs to one system")]
    public void A_part_moved_to_another_system_leaves_its_assembly()
    {
        Assert.Equal(Roof with { SystemId = Doors.Id, AssemblyId = null }, Assert.Single(BulkEdit.Changes(Tree, [Roof.Id], new(SystemId: Doors.Id)).Parts).After);
        Assert.Equal(Roof with { AssemblyId = null }, Assert.Single(BulkEdit.Changes(Tree, [Roof.Id], new(OutOfAssembly: true)).Parts).After);
    }

    [Fact]
    [Truth(Grade.Property, "a refusal names what is wrong")]
    public void What_does_not_fit_is_refused()
    {
        string Refused(Guid part, PartEdit edit) => Assert.Throws<RefusedException>(() => BulkEdit.Changes(Tree, [part], edit)).Message;
        Assert.StartsWith("part", Refused(Guid.Empty, new()));
        Assert.StartsWith("system", Refused(Roof.Id, new(SystemId: Guid.Empty)));
        Assert.StartsWith("assembly", Refused(Roof.Id, new(AssemblyId: Guid.Empty)));
        Assert.StartsWith("assembly", Refused(Roof.Id, new(SystemId: Doors.Id, AssemblyId: Front.Id)));
        Assert.StartsWith("assembly", Refused(Roof.Id, new(AssemblyId: Front.Id, OutOfAssembly: true)));
        Assert.StartsWith("Roof, hand", Refused(Roof.Id, new(Hand: (Hand)7)));
        Assert.StartsWith("Roof, reason", Refused(Roof.Id, new(Route: new(Route.Clean, "", new(2031, 5, 4)))));
    }
}
