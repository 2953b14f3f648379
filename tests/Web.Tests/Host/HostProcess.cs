using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Reflection;

namespace WitnessMark.Web.Tests;

/// <summary>The web host as a process of its own, on a free port, with records in a folder of its own.</summary>
public sealed class HostProcess : IAsyncDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("wm-web-").FullName;
    readonly string[] _more;
    Process? _process;
    int? _disk;

    HostProcess(string[] more) => _more = more;

    public Uri Address { get; private set; } = null!;

    public int ProcessId => _process!.Id;

    /// <summary>Where paired devices come in, when it was started for them.</summary>
    public Uri LanAddress { get; private set; } = null!;

    public string Database => Path.Combine(_folder, "records.db");

    public HttpClient Http { get; private set; } = null!;

    /// <param name="more">Further arguments.</param>
    public static async Task<HostProcess> Start(params string[] more)
    {
        var host = new HostProcess(more);
        await host.Begin(0);
        return host;
    }

    /// <summary>With its records on a disk of this size that it alone sees (a mount namespace of Linux).</summary>
    public static async Task<HostProcess> StartOnSmallDisk(int kilobytes)
    {
        var host = new HostProcess([]) { _disk = kilobytes };
        await host.Begin(0);
        return host;
    }

    /// <summary>Where another process finds a file that lies beside the records.</summary>
    public string Beside(string name) => Path.Combine(_disk is null ? _folder : $"/proc/{ProcessId}/root{_folder}", name);

    /// <summary>As it serves paired devices: by HTTPS, at this machine's loopback address so that no network is needed.</summary>
    public static async Task<HostProcess> StartForDevices()
    {
        var port = FreePort();
        var host = await Start("--lan", "--lan-address", "127.0.0.1", "--lan-port", $"{port}");
        host.LanAddress = new($"https://127.0.0.1:{port}/");
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
        await process.WaitForExitAsync(new CancellationTokenSource(TimeSpan.FromSeconds(120)).Token);
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
        string[] args = ["--port", $"{port}", "--db", Database, .. _more];
        _process = _disk is { } kilobytes ? LaunchOnDisk(kilobytes, args) : Launch(args, null);
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

    /// <summary>Root may mount as it is; anybody else as root of a user namespace. Exec keeps the process id.</summary>
    Process LaunchOnDisk(int kilobytes, string[] args) => Process.Start(new ProcessStartInfo("unshare",
        [Environment.IsPrivilegedProcess ? "-m" : "-rm", "sh", "-c", $"mount -t tmpfs -o size={kilobytes}k tmpfs \"$0\" && exec dotnet \"$@\"", _folder, Dll, .. args])
    {
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    })!;

    /// <summary>The one that was built with the tests, or one named by WM_HOST: the published app is tried by the same tests.</summary>
    static string Dll => Environment.GetEnvironmentVariable("WM_HOST") is { Length: > 0 } named ? named : typeof(HostProcess).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "WebHost").Value!;

    static Process Launch(IEnumerable<string> args, string? urls)
    {
        var start = new ProcessStartInfo("dotnet", [Dll, .. args]) { RedirectStandardOutput = true, RedirectStandardError = true };
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
