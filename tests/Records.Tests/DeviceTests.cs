using WitnessMark.Maths;
using WitnessMark.Stores.Devices;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

[Truth(Grade.Property, "a device reads back as it was paired until it is dropped; no two hold one key")]
public sealed class DeviceTests : RoomFile
{
    static PairedDevice Device(int n) => new(new Guid(n, 7, 0, new byte[8]), $"phone {n}", new string((char)('a' + n), 64), Noon.AddMinutes(n), Noon.AddMinutes(n));

    [Fact]
    public async Task Devices_are_kept_renamed_seen_and_dropped()
    {
        var devices = (await RecordRoom.Open(PathOf("records.db"))).Devices;
        await devices.Pair(Device(2));
        await devices.Pair(Device(1));
        Assert.Equal([Device(1), Device(2)], await devices.All());
        Assert.True(await devices.Rename(Device(1).Id, "tablet"));
        await devices.Seen(Device(1).Id, Noon.AddDays(3));
        var reopened = (await RecordRoom.Open(PathOf("records.db"))).Devices;
        Assert.Equal(Device(1) with { Name = "tablet", SeenAt = Noon.AddDays(3) }, await reopened.Holding(Device(1).KeyHash));
        Assert.True(await reopened.Drop(Device(1).Id));
        Assert.False(await devices.Drop(Device(1).Id));
        Assert.Null(await devices.Holding(Device(1).KeyHash));
        Assert.False(await devices.Rename(Device(1).Id, "gone"));
    }

    [Fact]
    public async Task What_is_no_device_is_refused()
    {
        var devices = (await RecordRoom.Open(PathOf("records.db"))).Devices;
        await Assert.ThrowsAsync<RefusedException>(() => devices.Pair(Device(1) with { Name = " " }));
        await Assert.ThrowsAsync<RefusedException>(() => devices.Pair(Device(1) with { KeyHash = "key" }));
        await Assert.ThrowsAsync<RefusedException>(() => devices.Pair(Device(1) with { Id = Guid.Empty }));
        Assert.Empty(await devices.All());
        await devices.Pair(Device(1));
        await Assert.ThrowsAnyAsync<Exception>(() => devices.Pair(Device(2) with { KeyHash = Device(1).KeyHash }));
        await Assert.ThrowsAsync<RefusedException>(() => devices.Rename(Device(1).Id, new string('x', PairedDevice.LongestName + 1)));
        Assert.Equal([Device(1)], await devices.All());
    }
}
