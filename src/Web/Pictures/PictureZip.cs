using System.IO.Compression;
using WitnessMark.FrontOffice.MarkPicture;
using WitnessMark.FrontOffice.SharePictures;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.Web.Pictures;

/// <summary>Pictures as they leave the house: stripped of place and serial numbers, or with what is drawn on them; many as one stream.</summary>
sealed class PictureZip(IPictureStore originals, IPictureMaker maker)
{
    /// <summary>Longer side of a picture with its layer burnt in, px: sharp on any paper, and no memory is filled by it.</summary>
    const int LongestMarked = 4000;

    /// <summary>Writes one after the other, so that the first bytes go out at once and none but the picture in hand is held.</summary>
    /// <param name="strokes">What is drawn on a picture, by its id; pictures with nothing on them go as they are.</param>
    public async Task Write(Stream to, IReadOnlyList<PictureTaken> rows, Func<Guid?, string> part, IReadOnlyDictionary<Guid, string> strokes, Export export)
    {
        var stop = export.Stopped;
        // Written to a stream that cannot go back: sizes follow each file (APPNOTE 4.4.4, bit 3).
        await using var zip = await ZipArchive.CreateAsync(to, ZipArchiveMode.Create, leaveOpen: true, entryNameEncoding: null, stop);
        var listed = new List<SharedPicture>(rows.Count);
        foreach (var row in rows)
        {
            listed.Add(await Add(zip, row, listed.Count + 1, part(row.PartId), export.Asked.Originals, strokes.GetValueOrDefault(row.Id), stop));
            export.Told(listed.Count);
        }
        await Put(zip, SharedPictures.List, SharedPictures.Csv(listed), CompressionLevel.Optimal, stop);
    }

    /// <summary>One picture without what its camera wrote beside the pixels. Null when no such picture is kept.</summary>
    public async Task<Picture?> Clean(string id, CancellationToken stop) =>
        await originals.Read(id, stop) is { } picture ? picture with { Bytes = PictureStrip.Of(picture.Bytes.Span) } : null;

    /// <summary>A JPEG with the strokes burnt in; the original stays as it is. Null when no such picture is kept.</summary>
    public async Task<byte[]?> Marked(string id, string strokes, CancellationToken stop)
    {
        if (await originals.Read(id, stop) is not { } picture) return null;
        var drawn = StrokesJson.Read(strokes).Value;
        var head = PictureHead.Read(picture.Bytes.Span).Value;
        var tall = head.Lies ? (double)head.Width / head.Height : (double)head.Height / head.Width;
        return await Task.Run(() => maker.Marked(picture.Bytes, StrokeLines.Of(drawn, tall), LongestMarked), stop);
    }

    async Task<SharedPicture> Add(ZipArchive zip, PictureTaken row, int number, string part, bool asTaken, string? strokes, CancellationToken stop)
    {
        try
        {
            var (bytes, kind) = asTaken ? await originals.Read(row.Picture, stop) is { } original ? (original.Bytes, original.MediaType) : default
                : strokes is { Length: > 2 } ? (await Marked(row.Picture, strokes, stop), "image/jpeg")
                : await Clean(row.Picture, stop) is { } clean ? (clean.Bytes, clean.MediaType) : default;
            if (bytes.IsEmpty) return new("", row, part, "left out: the picture is no longer kept");
            var name = SharedPictures.Name(row, number, kind);
            // Pictures are packed already.
            await Put(zip, name, bytes, CompressionLevel.NoCompression, stop);
            return new(name, row, part, asTaken ? "as the camera wrote it" : "");
        }
        catch (RefusedException e)
        {
            return new("", row, part, $"left out: {e.Message}");
        }
    }

    static async Task Put(ZipArchive zip, string name, ReadOnlyMemory<byte> bytes, CompressionLevel level, CancellationToken stop)
    {
        await using var file = await zip.CreateEntry(name, level).OpenAsync(stop);
        await file.WriteAsync(bytes, stop);
    }
}
