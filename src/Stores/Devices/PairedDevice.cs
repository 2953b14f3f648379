using WitnessMark.Maths;

namespace WitnessMark.Stores.Devices;

/// <summary>A phone, tablet or other machine that may use the records over the house's network.</summary>
/// <param name="Name">As the person calls it.</param>
/// <param name="KeyHash">SHA-256 of the key that it holds, 64 lower-case hexadecimal digits. The key itself is kept nowhere here.</param>
/// <param name="SeenAt">When it last asked for something, to the minute or so.</param>
public sealed record PairedDevice(Guid Id, string Name, string KeyHash, DateTimeOffset PairedAt, DateTimeOffset SeenAt)
{
    /// <summary>Longest name, characters: it stands on one line of a phone.</summary>
    public const int LongestName = 60;

    /// <summary>Null when it is fit to be kept.</summary>
    public Refusal? Wrong =>
        (Id == Guid.Empty ? Refusal.Of("device id", null, "it is made when the device is paired") : null)
        ?? WrongName(Name)
        ?? (KeyHash is { Length: 64 } && KeyHash.All(char.IsAsciiHexDigitLower) ? null : Refusal.Of("device key", null, "a SHA-256 in hexadecimal is kept"));

    public static Refusal? WrongName(string? name) =>
        string.IsNullOrWhiteSpace(name) ? Refusal.Of("name of the device", null, "give it a name by which you know it, such as \"phone in the shed\"")
        : name.Length > LongestName ? Refusal.Of("name of the device", name, $"at most {LongestName} characters are kept")
        : name.Any(char.IsControl) ? Refusal.Of("name of the device", null, "write it on one line")
        : null;
}
