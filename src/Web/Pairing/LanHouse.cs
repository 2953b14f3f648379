using System.Collections.Immutable;
using System.Net;
using WitnessMark.Web.Pairing.Trust;

namespace WitnessMark.Web.Pairing;

/// <summary>How the house is reached over its network.</summary>
/// <param name="Trust">Null when it serves this machine alone.</param>
/// <param name="Listening">The addresses that are listened at, the likeliest first.</param>
public sealed record LanHouse(HouseTrust? Trust, int Port, ImmutableArray<IPAddress> Listening)
{
    public static readonly LanHouse None = new(null, 0, []);

    /// <summary>Where a device goes. Loopback is told only when there is nothing else.</summary>
    public IEnumerable<string> Addresses =>
        Listening.Where(a => !IPAddress.IsLoopback(a)).DefaultIfEmpty(Listening.FirstOrDefault()!).OfType<IPAddress>().Select(a => $"https://{Spelled(a)}:{Port}");

    /// <summary>Whether a request may call the host so: by what its certificate answers to.</summary>
    public bool IsCalled(string host) => Trust is { } trust
        && (trust.Names.Contains(host, StringComparer.OrdinalIgnoreCase) || (IPAddress.TryParse(host.Trim('[', ']'), out var ip) && trust.Addresses.Contains(ip)));

    static string Spelled(IPAddress address) => address.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 ? $"[{address}]" : $"{address}";
}
