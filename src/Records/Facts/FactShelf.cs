using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;

namespace WitnessMark.Records;

/// <summary>
/// Facts that have been read stay on the shelf: none is ever altered (triggers forbid it) and later ones arrive behind, so only those
/// that came since are read again.
/// </summary>
sealed class FactShelf
{
    readonly ConcurrentDictionary<(Guid Vehicle, string Kind), object> _shelves = new();

    sealed record Row<T>(ImmutableArray<T> Facts, long Last);

    /// <summary>All that were ever written, in the order they arrived.</summary>
    public async Task<ImmutableArray<T>> Of<T>(RecordsDb db, Guid vehicle, CancellationToken cancel)
    {
        var kind = typeof(T).Name;
        var row = (Row<T>)_shelves.GetOrAdd((vehicle, kind), _ => new Row<T>([], 0));
        var since = await db.Set<KeptFact>().AsNoTracking()
            .Where(f => f.VehicleId == vehicle && f.Kind == kind && EF.Property<long>(f, RecordsDb.Arrival) > row.Last)
            .OrderBy(f => EF.Property<long>(f, RecordsDb.Arrival))
            .Select(f => new { f.Text, At = EF.Property<long>(f, RecordsDb.Arrival) }).ToListAsync(cancel);
        if (since.Count == 0) return row.Facts;
        var grown = new Row<T>([.. row.Facts, .. since.Select(f => JsonText.Read<T>(f.Text))], since[^1].At);
        // Another reader may have come further meanwhile.
        _shelves.AddOrUpdate((vehicle, kind), grown, (_, there) => ((Row<T>)there).Last > grown.Last ? there : grown);
        return grown.Facts;
    }
}
