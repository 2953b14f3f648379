using System.Collections.Immutable;
using System.Net;
using WitnessMark.Maths;
using WitnessMark.Web.Pairing.Trust;

namespace WitnessMark.Web.Hosting;

/// <summary>What was asked for at the start, as typed.</summary>
/// <param name="Urls">ASPNETCORE_URLS.</param>
/// <param name="Lan">The house's network is to be served too.</param>
public sealed record ServeAsked(
    int Port, string? Database = null, string? Address = null, string? Urls = null, bool Lan = false, int? LanPort = null, string? LanAddress = null);

/// <summary>Where the house is served from and where its records lie.</summary>
/// <param name="Port">On this machine's loopback address; 0 takes a free port.</param>
/// <param name="Database">Full path of the SQLite file.</param>
/// <param name="LanPort">Of the house's network.</param>
/// <param name="Lan">The private addresses served there; none unless it was asked for.</param>
public sealed record ServeOptions(int Port, string Database, int LanPort, ImmutableArray<IPAddress> Lan)
{
    public const int UsualPort = 5170, UsualLanPort = 5171;

    /// <summary>Checks what was asked for. Without pairing only the loopback address is served: the records carry no password.</summary>
    /// <param name="own">This machine's private addresses.</param>
    public static Parsed<ServeOptions> Of(ServeAsked asked, ImmutableArray<IPAddress> own)
    {
        if (asked.Port is < 0 or > 65535)
            return Refusal.Of("--port", $"{asked.Port}", "write a port from 1 to 65535, or 0 for a free one");
        if (asked.Address is { } address && !IsLoopback(address))
            return Refusal.Of("--address", address, "only this machine is served, write 127.0.0.1");
        foreach (var url in (asked.Urls ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries))
            if (!Uri.TryCreate(url, UriKind.Absolute, out var uri) || !IsLoopback(uri.Host))
                return Refusal.Of("ASPNETCORE_URLS", url, "only this machine is served, leave it out and use --port");
        if (WrongLan(asked, own) is { } wrong) return wrong;
        ImmutableArray<IPAddress> lan = !asked.Lan ? [] : asked.LanAddress is { } one ? [IPAddress.Parse(one)] : own;
        return new ServeOptions(asked.Port, Path.GetFullPath(asked.Database ?? UsualDatabase()), asked.LanPort ?? UsualLanPort, lan);
    }

    static Refusal? WrongLan(ServeAsked asked, ImmutableArray<IPAddress> own)
    {
        if (!asked.Lan)
            return asked.LanPort is { } port ? Refusal.Of("--lan-port", $"{port}", "write --lan too")
                : asked.LanAddress is { } address ? Refusal.Of("--lan-address", address, "write --lan too") : null;
        var lanPort = asked.LanPort ?? UsualLanPort;
        if (lanPort is < 1 or > 65535) return Refusal.Of("--lan-port", $"{lanPort}", "write a port from 1 to 65535");
        if (lanPort == asked.Port) return Refusal.Of("--lan-port", $"{lanPort}", "it is the port of this machine itself, write another");
        if (asked.LanAddress is not { } typed)
            return own.IsEmpty ? new("--lan: this machine has no private address (10., 172.16. to 172.31., 192.168. or fd…); connect it to the house's network.") : null;
        if (!IPAddress.TryParse(typed, out var ip) || !HouseNet.IsPrivate(ip))
            return Refusal.Of("--lan-address", typed, "write one of this machine's private addresses, such as 192.168.1.20; a public one is never served");
        return IPAddress.IsLoopback(ip) || own.Contains(ip) ? null
            : Refusal.Of("--lan-address", typed, own.IsEmpty ? "this machine has no private address" : $"this machine has {string.Join(", ", own)}");
    }

    static bool IsLoopback(string host) =>
        host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));

    static string UsualDatabase() => Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create),
        "witness-mark", "witness-mark.db");
}
