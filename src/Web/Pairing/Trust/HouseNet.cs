using System.Collections.Immutable;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Text.RegularExpressions;

namespace WitnessMark.Web.Pairing.Trust;

/// <summary>Addresses and names that belong to one house's own network and to nobody on the internet.</summary>
public static partial class HouseNet
{
    /// <summary>RFC 1918 (10, 172.16 and 192.168), RFC 4193 (fc00::/7), RFC 4291 (fe80::/10), and this machine itself.</summary>
    public static ImmutableArray<IPNetwork> Ranges { get; } =
    [
        IPNetwork.Parse("10.0.0.0/8"), IPNetwork.Parse("172.16.0.0/12"), IPNetwork.Parse("192.168.0.0/16"), IPNetwork.Parse("127.0.0.0/8"),
        IPNetwork.Parse("fc00::/7"), IPNetwork.Parse("fe80::/10"), IPNetwork.Parse("::1/128"),
    ];

    /// <summary>RFC 6761 (localhost), RFC 6762 (local), RFC 8375 (home.arpa); "lan" is what many house routers hand out.</summary>
    public static ImmutableArray<string> Endings { get; } = ["localhost", "local", "lan", "home.arpa"];

    public static bool IsPrivate(IPAddress address) => Ranges.Any(r => r.Contains(address));

    /// <summary>This machine's private addresses that others can reach; those on a network with a way out come first, IPv4 before IPv6.</summary>
    public static ImmutableArray<IPAddress> OwnAddresses() =>
    [
        .. from card in NetworkInterface.GetAllNetworkInterfaces()
           where card.OperationalStatus == OperationalStatus.Up && card.NetworkInterfaceType != NetworkInterfaceType.Loopback
           let properties = card.GetIPProperties()
           from own in properties.UnicastAddresses
           // An address of one link needs the name of the card beside it; no browser takes that.
           where IsPrivate(own.Address) && !own.Address.IsIPv6LinkLocal
           orderby properties.GatewayAddresses.Count == 0, own.Address.AddressFamily == AddressFamily.InterNetworkV6
           select own.Address,
    ];

    /// <summary>
    /// What the machine may be called on the house's network, apart from its addresses. A bare name of letters alone is left out: it may be
    /// a top-level domain, now or later, and who may speak for it may speak for everything under it. Names with a digit or a hyphen cannot be.
    /// </summary>
    public static ImmutableArray<string> NamesOf(string machine)
    {
        var name = machine.ToLowerInvariant();
        if (!HostName().IsMatch(name)) return ["localhost"];
        var first = name.Split('.')[0];
        string[] bare = name.Any(c => c is '.' or '-' or (>= '0' and <= '9')) && !name.StartsWith("xn--", StringComparison.Ordinal) ? [name] : [];
        return [.. new[] { "localhost", $"{first}.local", $"{first}.lan", $"{first}.home.arpa" }.Concat(bare).Distinct()];
    }

    [GeneratedRegex(@"^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?(\.[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?){0,5}$")]
    private static partial Regex HostName();
}
