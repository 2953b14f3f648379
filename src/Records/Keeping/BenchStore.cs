using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.Records;

sealed class BenchStore(Func<RecordsDb> open) : IBenchStore
{
    public async Task<Versioned<SampleSketch>?> Sketch(Guid sample, CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.Standing<SampleSketch>(sample, cancel);
    }

    public Task<Saved<SampleSketch>> Save(SampleSketch row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, Check.Of(row), cancel);

    public async Task<Versioned<FoldedPart>?> Folded(Guid sample, CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.Standing<FoldedPart>(sample, cancel);
    }

    public Task<Saved<FoldedPart>> Save(FoldedPart row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, Check.Of(row), cancel);

    public async Task<ImmutableArray<Versioned<OwnedInstrument>>> Instruments(CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.List(db.Set<OwnedInstrument>().OrderBy(i => i.Name), cancel);
    }

    public Task<Saved<OwnedInstrument>> Save(OwnedInstrument row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, Check.Of(row), cancel);
}
