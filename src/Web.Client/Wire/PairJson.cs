using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace WitnessMark.Web.Client.Wire;

/// <summary>What anybody who reaches the host may know of it, paired or not.</summary>
/// <param name="Addresses">Where it is served on the house's network, the likeliest first; none when it serves this machine alone.</param>
/// <param name="Authority">The name of the authority that signs for these addresses.</param>
/// <param name="Fingerprint">SHA-256 of the authority's certificate, hexadecimal in pairs.</param>
/// <param name="Until">Until when the authority holds.</param>
/// <param name="Desk">Whether it was asked from the host's own machine, which needs no pairing.</param>
/// <param name="PairedAs">The name of the device that asks, when it is paired.</param>
public sealed record HouseShown(ImmutableArray<string> Addresses, string? Authority, string? Fingerprint, DateTimeOffset? Until, bool Desk, string? PairedAs);

/// <summary>A code that pairs one device, as it is shown once.</summary>
/// <param name="Digits">Eight of them.</param>
/// <param name="Address">Where the device goes, the code in the fragment, which no browser sends to a host.</param>
public sealed record PairingCode(string Digits, string Address, DateTimeOffset Until);

/// <summary>How the code stands that was made last.</summary>
/// <param name="Standing">It can still be used.</param>
/// <param name="TriesLeft">How many more wrong codes it outlives.</param>
public sealed record CodeState(bool Standing, int TriesLeft, DateTimeOffset? Until);

/// <summary>A device asks to be paired.</summary>
public sealed record AskedToPair(string Code, string Name);

public sealed record DeviceName(string Name);

/// <param name="ThisOne">It is the device that asks.</param>
public sealed record DeviceShown(Guid Id, string Name, DateTimeOffset PairedAt, DateTimeOffset SeenAt, bool ThisOne);

/// <summary>How pairing travels; spelled as in <see cref="WireJson"/>.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UseStringEnumConverter = true, IgnoreReadOnlyProperties = true, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(HouseShown))]
[JsonSerializable(typeof(PairingCode))]
[JsonSerializable(typeof(CodeState))]
[JsonSerializable(typeof(AskedToPair))]
[JsonSerializable(typeof(DeviceName))]
[JsonSerializable(typeof(DeviceShown))]
[JsonSerializable(typeof(ImmutableArray<DeviceShown>))]
[JsonSerializable(typeof(Recorded))]
public sealed partial class PairJson : JsonSerializerContext;
