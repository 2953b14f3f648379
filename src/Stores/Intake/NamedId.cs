using System.Security.Cryptography;
using System.Text;

namespace WitnessMark.Stores;

/// <summary>
/// An id that follows from a name (RFC 9562, version 5), so that the same typed list taken in twice is the same rows.
/// </summary>
public static class NamedId
{
    /// <summary>The space in which vehicles are named.</summary>
    public static readonly Guid Vehicles = new("6f0c1d52-6f6b-4a57-9a3e-52c1f4c3a911");

    public static Guid Of(Guid space, string name)
    {
        byte[] named = [.. space.ToByteArray(bigEndian: true), .. Encoding.UTF8.GetBytes(name)];
        Span<byte> hash = stackalloc byte[SHA1.HashSizeInBytes];
        SHA1.HashData(named, hash);
        hash[6] = (byte)(hash[6] & 0x0F | 0x50);
        hash[8] = (byte)(hash[8] & 0x3F | 0x80);
        return new Guid(hash[..16], bigEndian: true);
    }
}
