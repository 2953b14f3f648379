using WitnessMark.Maths;
using WitnessMark.Stores.Notes;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

public sealed class NewestTests : RoomFile
{
    static Note Note(int n, Guid? part = null) => new(new Guid(n, 4, 0, new byte[8]), Van.Id, part, $"note {n}", Noon.AddMinutes(n), "phone");

    [Fact]
    [Truth(Grade.Property, "stretches joined give all that stand, newest arrival first, whatever their size and whatever was taken back")]
    public async Task Stretches_joined_are_all_that_stand()
    {
        var desk = (await Furnished()).Desk;
        await desk.Notes.Append([.. Enumerable.Range(1, 23).Select(n => Note(n, n % 3 == 0 ? Bracket.Id : null))]);
        await desk.TakenBack.Append([new(new Guid(1, 5, 0, new byte[8]), Van.Id, Note(7).Id, "twice", Noon, "phone"), new(new Guid(2, 5, 0, new byte[8]), Van.Id, Note(9).Id, "twice", Noon, "phone")]);
        foreach (var take in new[] { 1, 4, 7, 21, 22, 500 })
        {
            var all = new List<string>();
            for (long? before = null; ;)
            {
                var stretch = await desk.Notes.Newest(Van.Id, new(before, null, take));
                Assert.Equal(21, stretch.Count);
                all.AddRange(stretch.Rows.Select(r => r.Words));
                if ((before = stretch.Before) is null) break;
            }
            Assert.Equal(Enumerable.Range(1, 23).Reverse().Where(n => n is not (7 or 9)).Select(n => $"note {n}"), all);
        }
        var ofPart = await desk.Notes.Newest(Van.Id, new(null, Bracket.Id));
        Assert.Equal((6, "note 21"), (ofPart.Count, ofPart.Rows[0].Words));
        await Assert.ThrowsAsync<RefusedException>(() => desk.Notes.Newest(Van.Id, new(Take: 501)));
    }

    [Fact]
    [Truth(Grade.Published, "sqlite.org/pragma.html#pragma_data_version: unchanged until another connection commits")]
    public async Task The_stamp_changes_with_every_commit_of_any_room_and_only_then()
    {
        var room = await Furnished();
        var other = await RecordRoom.Open(PathOf("records.db"));
        var stamp = room.Stamp.Now();
        await room.Desk.Notes.Of(Van.Id);
        Assert.Equal(stamp, room.Stamp.Now());
        await room.Desk.Notes.Append([Note(1)]);
        var second = room.Stamp.Now();
        Assert.NotEqual(stamp, second);
        await other.Desk.Notes.Append([Note(2)]);
        Assert.NotEqual(second, room.Stamp.Now());
        // What another room wrote behind what this one has read is read too.
        Assert.Equal(["note 1", "note 2"], (await room.Desk.Notes.Of(Van.Id)).Select(n => n.Words));
        await other.Desk.Notes.Append([Note(3)]);
        Assert.Equal(3, (await room.Desk.Notes.Of(Van.Id)).Length);
    }
}
