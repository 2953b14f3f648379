using System.Collections.Immutable;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Records;

sealed class KeptDecisions<T>(Func<RecordsDb> open) : IDecisions<T> where T : class, IDecision
{
    static readonly string Kind = typeof(T).Name;

    public async Task<ImmutableArray<Versioned<T>>> Of(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        var rows = await db.List(db.Set<KeptDecision>().Where(d => d.VehicleId == vehicle && d.Kind == Kind).OrderBy(d => d.Id), cancel);
        return [.. rows.Select(r => r.As(Read))];
    }

    public async Task<Saved<T>> Save(T row, int basedOn, CancellationToken cancel = default)
    {
        var kept = new KeptDecision(row.Id, row.VehicleId, Kind, JsonText.Of(row));
        return (await Decisions.Save(open, kept, row.Id, basedOn, row.Wrong(), cancel)).As(Read);
    }

    static T Read(KeptDecision kept) => JsonText.Read<T>(kept.Text);
}
