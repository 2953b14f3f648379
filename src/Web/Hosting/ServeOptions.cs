using System.Net;
using WitnessMark.Maths;

namespace WitnessMark.Web.Hosting;

/// <summary>Where the house is served from and where its records lie.</summary>
/// <param name="Port">0 takes a free port.</param>
/// <param name="Database">Full path of the SQLite file.</param>
public sealed record ServeOptions(int Port, string Database)
{
    public const int UsualPort = 5170;

    /// <summary>Checks what was asked for. Only the loopback address is served: the records carry no password.</summary>
    public static Parsed<ServeOptions> Of(int port, string? database, string? address, string? urls)
    {
        if (port is < 0 or > 65535)
            return Refusal.Of("--port", port.ToString(), "write a port from 1 to 65535, or 0 for a free one");
        if (address is not null && !IsLoopback(address))
            return Refusal.Of("--address", address, "only this machine is served, write 127.0.0.1");
        foreach (var url in (urls ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries))
            if (!Uri.TryCreate(url, UriKind.Absolute, out var uri) || !IsLoopback(uri.Host))
                return Refusal.Of("ASPNETCORE_URLS", url, "only this machine is served, leave it out and use --port");
        return new ServeOptions(port, Path.GetFullPath(database ?? UsualDatabase()));
    }

    static bool IsLoopback(string host) =>
        host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));

    static string UsualDatabase() => Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create),
        "witness-mark", "witness-mark.db");
}
