using WitnessMark.Maths;

namespace WitnessMark.Stores.Keeping;

/// <summary>
/// Keeps pictures by their content: the id is the SHA-256 of the bytes in lower-case hexadecimal, so that a picture sent
/// twice is kept once.
/// </summary>
public interface IPictureStore
{
    /// <returns>The id.</returns>
    /// <exception cref="RefusedException">Not a picture that is kept; see <see cref="Photographs.Files.PictureHead.Read"/>.</exception>
    Task<string> Keep(ReadOnlyMemory<byte> bytes, CancellationToken cancel = default);

    /// <summary>The same from a stream, which is not held in memory: written as it comes and looked at before it counts as kept.</summary>
    /// <exception cref="RefusedException">As above; too large; or the disk is full. Nothing of it stays.</exception>
    Task<string> Keep(Stream bytes, CancellationToken cancel = default);

    /// <summary>Null when no such picture is kept.</summary>
    Task<Picture?> Read(string id, CancellationToken cancel = default);

    /// <summary>The same to be read from, bit for bit as it was kept. Null when no such picture is kept.</summary>
    Stream? Open(string id);

    /// <summary>The ids of all that are kept, in no order.</summary>
    IEnumerable<string> All();
}

/// <param name="MediaType">As in <c>image/jpeg</c>.</param>
public sealed record Picture(string Id, string MediaType, ReadOnlyMemory<byte> Bytes);
