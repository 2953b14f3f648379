using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.Records;

sealed class VehicleStore(Func<RecordsDb> open) : IVehicleStore
{
    public async Task<ImmutableArray<Versioned<Vehicle>>> Vehicles(CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.List(db.Set<Vehicle>().OrderBy(v => v.Name), cancel);
    }

    public async Task<VehicleTree?> Tree(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        await using var oneMoment = await db.ReadOneMoment(cancel);
        if (await db.Standing<Vehicle>(vehicle, cancel) is not { } v) return null;
        var systems = db.Set<VehicleSystem>().Where(s => s.VehicleId == vehicle);
        var parts = db.Set<Part>().Where(p => systems.Any(s => s.Id == p.SystemId));
        var assemblies = db.Set<Assembly>().Where(a => systems.Any(s => s.Id == a.SystemId));
        var samples = db.Set<PartSample>().Where(s => parts.Any(p => p.Id == s.PartId));
        return new(v,
            await db.List(systems.OrderBy(s => s.Order).ThenBy(s => s.Name), cancel),
            await db.List(assemblies.OrderBy(a => a.Order).ThenBy(a => a.Name), cancel),
            await db.List(parts.OrderBy(p => p.Name).ThenBy(p => p.Hand), cancel),
            await db.List(samples.OrderBy(s => s.Title), cancel));
    }

    public async Task<Versioned<Part>?> Part(Guid id, CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.Standing<Part>(id, cancel);
    }

    public async Task<Versioned<PartSample>?> Sample(Guid id, CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.Standing<PartSample>(id, cancel);
    }

    public Task<Saved<Vehicle>> Save(Vehicle row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, Check.Of(row), cancel);

    public Task<Saved<VehicleSystem>> Save(VehicleSystem row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, Check.Of(row), cancel);

    public Task<Saved<Assembly>> Save(Assembly row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, Check.Of(row), cancel);

    public async Task<Saved<Part>> Save(Part row, int basedOn, CancellationToken cancel = default)
    {
        await using var db = open();
        return await Decisions.Save(open, row, row.Id, basedOn, Check.Of(row) ?? await db.Misplaced([row], cancel), cancel);
    }

    public Task<Saved<PartSample>> Save(PartSample row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, Check.Of(row), cancel);

    public Task<Applied> Apply(TreeChanges changes, CancellationToken cancel = default) => TreeEdits.Apply(open, changes, cancel);

    public async Task<int> TakeIn(VehicleFile file, CancellationToken cancel = default)
    {
        await using var db = open();
        await using var all = await db.Database.BeginTransactionAsync(cancel);
        var taken = await db.AddMissing([file.Vehicle], v => v.Id, Check.Of, cancel)
            + await db.AddMissing(file.Systems, s => s.Id, Check.Of, cancel)
            + await db.AddMissing(file.Assemblies, a => a.Id, Check.Of, cancel)
            + await db.AddMissing(file.Parts, p => p.Id, Check.Of, cancel)
            + await db.AddMissing(file.Samples, s => s.Id, Check.Of, cancel);
        await db.SaveChangesAsync(cancel);
        await all.CommitAsync(cancel);
        return taken;
    }
}
