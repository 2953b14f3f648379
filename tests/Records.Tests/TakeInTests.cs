using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

public sealed class TakeInTests : RoomFile
{
    const string Head = "system,part,reference,hand,quantity,condition,route,reason,decided\n";

    static VehicleFile Typed(string parts) => VehicleFile.Read(
        "name,maker,model,year,notes\nvan,Invented,One,1934,\n", Head + parts, "part,hand,title,origin,lender,lent,due,wanted,sheet\nWing,LH,old,taken off,,,,,\n").Value;

    [Fact]
    [Truth(Grade.Property, "taking in twice is taking in once; what was decided since is left alone")]
    public async Task A_list_taken_in_again_adds_only_what_is_new()
    {
        var room = await RecordRoom.Open(PathOf("records.db"));
        var first = Typed("Body,Wing,,LH,1,split,,,\n");
        Assert.Equal(4, await room.Vehicles.TakeIn(first));
        var wing = first.Parts[0];
        await room.Vehicles.Save(wing with { Route = new(Route.Refurbish, "worth it", new(2031, 5, 4)) }, 1);

        Assert.Equal(1, await room.Vehicles.TakeIn(Typed("Body,Wing,,LH,1,split,,,\nBody,Wing,,RH,1,sound,,,\n")));
        var tree = (await room.Vehicles.Tree(first.Vehicle.Id))!;
        Assert.Equal(2, tree.Parts.Length);
        Assert.Equal(Route.Refurbish, tree.Parts.Single(p => p.Row.Id == wing.Id).Row.Route!.Route);
    }

    [Fact]
    [Truth(Grade.Property, "all or nothing")]
    public async Task A_list_with_one_bad_row_is_left_out_whole()
    {
        var room = await RecordRoom.Open(PathOf("records.db"));
        var good = Typed("Body,Wing,,LH,1,split,,,\n");
        await Assert.ThrowsAsync<RefusedException>(() => room.Vehicles.TakeIn(good with { Parts = [good.Parts[0] with { Quantity = 0 }] }));
        Assert.Empty(await room.Vehicles.Vehicles());
    }

    [Fact]
    [Truth(Grade.Property, "reading goes on while another writes")]
    public async Task A_reader_does_not_wait_for_a_writer()
    {
        var room = await Furnished();
        await using var writer = new RecordsDb(RecordRoom.Options(PathOf("records.db")));
        await using var open = await writer.Database.BeginTransactionAsync();
        var tree = await room.Vehicles.Tree(Van.Id).WaitAsync(TimeSpan.FromSeconds(10));
        Assert.Equal(Van, tree!.Vehicle.Row);
    }
}
