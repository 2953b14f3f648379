using WitnessMark.Stores.Keeping;

namespace WitnessMark.Records;

/// <summary>Pictures as files named by their content, in a folder beside the records, two levels deep so that no folder grows long.</summary>
sealed class PictureFolder(string folder) : IPictureStore
{
    public async Task<string> Keep(ReadOnlyMemory<byte> bytes, CancellationToken cancel = default)
    {
        _ = PictureKind.Of(bytes.Span).Value;
        var id = PictureKind.Id(bytes.Span);
        var path = PathOf(id);
        if (File.Exists(path)) return id;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        // Written aside and moved into place: a picture is there whole or not at all.
        var half = $"{path}.{Guid.NewGuid():N}.half";
        await using (var file = new FileStream(half, FileMode.CreateNew, FileAccess.Write, FileShare.None))
        {
            await file.WriteAsync(bytes, cancel);
            file.Flush(flushToDisk: true);
        }
        File.Move(half, path, overwrite: true);
        return id;
    }

    public async Task<Picture?> Read(string id, CancellationToken cancel = default)
    {
        // An id is hexadecimal, so no address can lead out of the folder.
        if (!PictureKind.IsId(id) || !File.Exists(PathOf(id))) return null;
        var bytes = await File.ReadAllBytesAsync(PathOf(id), cancel);
        return new(id, PictureKind.Of(bytes).Value, bytes);
    }

    string PathOf(string id) => Path.Combine(folder, id[..2], id);
}
