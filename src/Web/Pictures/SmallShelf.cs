using System.Text;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;

namespace WitnessMark.Web.Pictures;

/// <summary>A smaller copy of a picture, or why none can be made.</summary>
sealed record Small(ReadOnlyMemory<byte> Jpeg, string? Why);

/// <summary>
/// Smaller copies of the pictures, in a folder beside the originals. They may be thrown away at any time: what is lost is made again.
/// One is made at a time, so that many large pictures at once do not fill the memory.
/// </summary>
sealed class SmallShelf(string folder, IPictureStore originals, IPictureMaker maker) : IDisposable
{
    static readonly SmallSize[] Sizes = [SmallSize.List, SmallSize.View];

    readonly SemaphoreSlim _making = new(1);

    /// <summary>Made already, or found to be impossible.</summary>
    public bool Has(string id) => Sizes.All(s => File.Exists(PathOf(id, s))) || File.Exists(WhyNot(id));

    /// <summary>Made now when it is not there. Null when no such picture is kept.</summary>
    public async Task<Small?> Find(string id, SmallSize size, CancellationToken stop)
    {
        if (!PictureKind.IsId(id)) return null;
        if (await Kept(id, size, stop) is { } kept) return kept;
        await _making.WaitAsync(stop);
        try
        {
            return await Kept(id, size, stop) ?? await Make(id, size, stop);
        }
        finally
        {
            _making.Release();
        }
    }

    public void Dispose() => _making.Dispose();

    async Task<Small?> Kept(string id, SmallSize size, CancellationToken stop) =>
        File.Exists(PathOf(id, size)) ? new(await File.ReadAllBytesAsync(PathOf(id, size), stop), null)
        : File.Exists(WhyNot(id)) ? new(default, await File.ReadAllTextAsync(WhyNot(id), stop))
        : null;

    async Task<Small?> Make(string id, SmallSize size, CancellationToken stop)
    {
        try
        {
            if (await originals.Read(id, stop) is not { } picture) return null;
            var made = await Task.Run(() => maker.Smaller(picture.Bytes, Sizes), stop);
            for (var i = 0; i < Sizes.Length; i++) await Put(PathOf(id, Sizes[i]), made[i], stop);
            return new(made[Array.IndexOf(Sizes, size)], null);
        }
        catch (RefusedException e)
        {
            await Put(WhyNot(id), Encoding.UTF8.GetBytes(e.Message), stop);
            return new(default, e.Message);
        }
    }

    /// <summary>A full disk loses a copy that can be made again, and nothing else.</summary>
    static async Task Put(string path, byte[] bytes, CancellationToken stop)
    {
        var half = $"{path}.{Guid.NewGuid():N}.half";
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            await File.WriteAllBytesAsync(half, bytes, stop);
            File.Move(half, path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            File.Delete(half);
        }
    }

    string PathOf(string id, SmallSize size) => Path.Combine(folder, id[..2], $"{id}.{(int)size}.jpg");

    string WhyNot(string id) => Path.Combine(folder, id[..2], $"{id}.none");
}
