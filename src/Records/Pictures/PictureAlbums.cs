using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;

namespace WitnessMark.Records;

/// <summary>Holds a vehicle's album for as long as no fact that could change it has arrived: 20,000 pictures are read once and not for every stretch.</summary>
sealed class PictureAlbums(Func<RecordsDb> open, FactShelf shelf) : IPictureAlbums
{
    static readonly string[] Kinds = [nameof(PictureTaken), nameof(PictureSaid), nameof(TakenBack)];

    readonly ConcurrentDictionary<Guid, (long Newest, PictureAlbum Album)> _held = new();

    public async Task<PictureAlbum> Of(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        await using var oneMoment = await db.ReadOneMoment(cancel);
        var newest = 0L;
        // One kind after the other: each is the last entry under the index, whatever the number of facts.
        foreach (var kind in Kinds)
            newest = Math.Max(newest, await db.Set<KeptFact>().Where(f => f.VehicleId == vehicle && f.Kind == kind)
                .OrderByDescending(f => EF.Property<long>(f, RecordsDb.Arrival)).Select(f => EF.Property<long>(f, RecordsDb.Arrival)).FirstOrDefaultAsync(cancel));
        if (_held.TryGetValue(vehicle, out var held) && held.Newest == newest) return held.Album;
        var takenBack = await shelf.Of<TakenBack>(db, vehicle, cancel);
        var album = new PictureAlbum(Rows.Standing(await shelf.Of<PictureTaken>(db, vehicle, cancel), takenBack), Rows.Standing(await shelf.Of<PictureSaid>(db, vehicle, cancel), takenBack));
        _held[vehicle] = (newest, album);
        return album;
    }
}
