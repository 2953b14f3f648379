using WitnessMark.Maths;

namespace WitnessMark.Stores.Keeping;

/// <summary>
/// Keeps pictures by their content: the id is the SHA-256 of the bytes in lower-case hexadecimal, so that a picture sent
/// twice is kept once.
/// </summary>
public interface IPictureStore
{
    /// <returns>The id.</returns>
    /// <exception cref="RefusedException">Not a picture that is kept; see <see cref="PictureKind.Of"/>.</exception>
    Task<string> Keep(ReadOnlyMemory<byte> bytes, CancellationToken cancel = default);

    /// <summary>Null when no such picture is kept.</summary>
    Task<Picture?> Read(string id, CancellationToken cancel = default);
}

/// <param name="MediaType">As in <c>image/jpeg</c>.</param>
public sealed record Picture(string Id, string MediaType, ReadOnlyMemory<byte> Bytes);
