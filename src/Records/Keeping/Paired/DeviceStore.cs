using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.Stores.Devices;

namespace WitnessMark.Records;

/// <summary>Each change is one statement. Every look-up asks the file, so a device dropped by another process is out at once too.</summary>
sealed class DeviceStore(Func<RecordsDb> open) : IDeviceStore
{
    public async Task<ImmutableArray<PairedDevice>> All(CancellationToken cancel = default)
    {
        await using var db = open();
        return [.. (await db.Set<PairedDevice>().AsNoTracking().ToListAsync(cancel)).OrderBy(d => d.PairedAt).ThenBy(d => d.Id)];
    }

    public async Task<PairedDevice?> Holding(string keyHash, CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.Set<PairedDevice>().AsNoTracking().SingleOrDefaultAsync(d => d.KeyHash == keyHash, cancel);
    }

    public async Task Pair(PairedDevice device, CancellationToken cancel = default)
    {
        if (device.Wrong is { } wrong) throw new RefusedException(wrong);
        await using var db = open();
        db.Add(device);
        await db.SaveChangesAsync(cancel);
    }

    public async Task<bool> Rename(Guid device, string name, CancellationToken cancel = default)
    {
        if (PairedDevice.WrongName(name) is { } wrong) throw new RefusedException(wrong);
        await using var db = open();
        return await One(db, device).ExecuteUpdateAsync(set => set.SetProperty(d => d.Name, name), cancel) > 0;
    }

    public async Task<bool> Drop(Guid device, CancellationToken cancel = default)
    {
        await using var db = open();
        return await One(db, device).ExecuteDeleteAsync(cancel) > 0;
    }

    public async Task Seen(Guid device, DateTimeOffset at, CancellationToken cancel = default)
    {
        await using var db = open();
        await One(db, device).ExecuteUpdateAsync(set => set.SetProperty(d => d.SeenAt, at), cancel);
    }

    static IQueryable<PairedDevice> One(RecordsDb db, Guid device) => db.Set<PairedDevice>().Where(d => d.Id == device);
}
