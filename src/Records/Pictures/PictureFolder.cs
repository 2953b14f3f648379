using System.Buffers;
using System.Security.Cryptography;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.Records;

/// <summary>Pictures as files named by their content, in a folder beside the records, two levels deep so that no folder grows long.</summary>
sealed class PictureFolder(string folder) : IPictureStore, IDisposable
{
    const int Block = 81920;

    /// <summary>One file is looked at at a time, in a borrowed array: many large pictures sent at once do not fill the memory.</summary>
    readonly SemaphoreSlim _looking = new(1);

    public async Task<string> Keep(ReadOnlyMemory<byte> bytes, CancellationToken cancel = default)
    {
        using var stream = new MemoryStream(bytes.ToArray(), writable: false);
        return await Keep(stream, cancel);
    }

    public async Task<string> Keep(Stream bytes, CancellationToken cancel = default)
    {
        // Written aside and moved into place: a picture is there whole or not at all.
        var half = Path.Combine(folder, $"{Guid.NewGuid():N}.half");
        try
        {
            Saved(() => Directory.CreateDirectory(folder));
            var (id, length) = await Write(half, bytes, cancel);
            await Look(half, length, cancel);
            var path = PathOf(id);
            if (!File.Exists(path)) Saved(() => Directory.CreateDirectory(Path.GetDirectoryName(path)!), () => File.Move(half, path, overwrite: true));
            return id;
        }
        finally
        {
            if (File.Exists(half)) File.Delete(half);
        }
    }

    public async Task<Picture?> Read(string id, CancellationToken cancel = default)
    {
        if (!IsKept(id)) return null;
        var bytes = await File.ReadAllBytesAsync(PathOf(id), cancel);
        return new(id, PictureKind.Of(bytes).Value, bytes);
    }

    public Stream? Open(string id) => IsKept(id) ? File.OpenRead(PathOf(id)) : null;

    public IEnumerable<string> All() => !Directory.Exists(folder) ? []
        : Directory.EnumerateDirectories(folder, "??").SelectMany(Directory.EnumerateFiles).Select(f => Path.GetFileName(f)).Where(PictureKind.IsId);

    public void Dispose() => _looking.Dispose();

    /// <summary>The id of what was written, and how many bytes.</summary>
    static async Task<(string Id, int Length)> Write(string half, Stream bytes, CancellationToken cancel)
    {
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        await using var file = Opened(half);
        var block = ArrayPool<byte>.Shared.Rent(Block);
        try
        {
            var length = 0;
            for (int n; (n = await bytes.ReadAsync(block, cancel)) > 0;)
            {
                length += n;
                if (length > PictureKind.Largest)
                    throw new RefusedException(Refusal.Of("picture", $"over {PictureKind.Largest / 1_000_000} MB", "take it at a smaller size"));
                sum.AppendData(block, 0, n);
                Saved(() => file.Write(block, 0, n));
            }
            Saved(() => file.Flush(flushToDisk: true));
            return (Convert.ToHexStringLower(sum.GetHashAndReset()), length);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(block);
        }
    }

    /// <summary>Refuses what is no whole picture of a kind and size that is kept.</summary>
    async Task Look(string half, int length, CancellationToken cancel)
    {
        await _looking.WaitAsync(cancel);
        var bytes = ArrayPool<byte>.Shared.Rent(Math.Max(1, length));
        try
        {
            await using var file = File.OpenRead(half);
            await file.ReadExactlyAsync(bytes.AsMemory(0, length), cancel);
            if (PictureHead.Read(bytes.AsSpan(0, length)).Refusal is { } refused) throw new RefusedException(refused);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(bytes);
            _looking.Release();
        }
    }

    static FileStream Opened(string half)
    {
        FileStream? file = null;
        Saved(() => file = new(half, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0));
        return file!;
    }

    static void Saved(params ReadOnlySpan<Action> writes)
    {
        try
        {
            foreach (var write in writes) write();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new RefusedException(Refusal.Of("picture", "not kept", $"make room on the disk of the records or let it be written to, then send it again ({e.Message})"), e);
        }
    }

    /// <summary>An id is hexadecimal, so no address can lead out of the folder.</summary>
    bool IsKept(string id) => PictureKind.IsId(id) && File.Exists(PathOf(id));

    string PathOf(string id) => Path.Combine(folder, id[..2], id);
}
