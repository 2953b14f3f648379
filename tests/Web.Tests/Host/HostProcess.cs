using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Reflection;

namespace WitnessMark.Web.Tests;

/// <summary>The web host as a process of its own, on a free port, with records in a folder of its own.</summary>
public sealed class HostProcess : IAsyncDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("wm-web-").FullName;
    Process? _process;

    HostProcess() { }

    public Uri Address { get; private set; } = null!;

    public string Database => Path.Combine(_folder, "records.db");

    public HttpClient Http { get; private set; } = null!;

    public static async Task<HostProcess> Start()
    {
        var host = new HostProcess();
        await host.Begin(0);
        return host;
    }

    /// <summary>Ends it as a power cut would: SIGKILL, nothing is told.</summary>
    public async Task Kill()
    {
        _process!.Kill();
        await _process.WaitForExitAsync();
    }

    /// <summary>Asks it to close, as a closing terminal does, and waits.</summary>
    public async Task<int> Close()
    {
        using var kill = Process.Start("kill", ["-TERM", _process!.Id.ToString()]);
        await kill.WaitForExitAsync();
        await _process.WaitForExitAsync(new CancellationTokenSource(TimeSpan.FromSeconds(20)).Token);
        return _process.ExitCode;
    }

    /// <summary>Once more with the same records at the same address.</summary>
    public Task Restart() => Begin(Address.Port);

    /// <summary>Runs the host with these arguments until it ends of itself.</summary>
    public static async Task<(int Code, string Errors)> Run(IEnumerable<string> args, string? urls = null)
    {
        using var process = Launch(args, urls);
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync(new CancellationTokenSource(TimeSpan.FromSeconds(30)).Token);
        await output;
        return (process.ExitCode, (await errors).Trim());
    }

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    async Task Begin(int port)
    {
        _process = Launch(["--port", $"{port}", "--db", Database], null);
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
        // The machine may be building at the same time. One that never answers is not left running.
        var waiting = new CancellationTokenSource(TimeSpan.FromSeconds(240)).Token;
        await using var late = waiting.Register(() => _process.Kill());
        while (await _process.StandardOutput.ReadLineAsync(waiting) is { } line)
            if (line.Split("is at ") is [_, var address])
            {
                Address = new Uri(address);
                Http = new HttpClient { BaseAddress = Address };
                _ = _process.StandardOutput.ReadToEndAsync(CancellationToken.None);
                return;
            }
        throw new InvalidOperationException("The host ended before it said where it is.");
    }

    static Process Launch(IEnumerable<string> args, string? urls)
    {
        var dll = typeof(HostProcess).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "WebHost").Value!;
        var start = new ProcessStartInfo("dotnet", [dll, .. args]) { RedirectStandardOutput = true, RedirectStandardError = true };
        if (urls is not null) start.Environment["ASPNETCORE_URLS"] = urls;
        return Process.Start(start)!;
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is { HasExited: false }) await Kill();
        _process?.Dispose();
        Http.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
