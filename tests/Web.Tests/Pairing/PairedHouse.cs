using System.Collections.Immutable;
using System.Net;
using System.Net.Http.Json;
using System.Net.Security;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using WitnessMark.Records;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Hosting;
using WitnessMark.Web.Pairing;

namespace WitnessMark.Web.Tests.Pairing;

/// <summary>A host in this process with both listeners on real sockets, a clock that can be moved, and clients that trust its authority and nothing else.</summary>
public sealed class PairedHouse : IAsyncDisposable
{
    readonly string _folder;
    readonly WebApplication _app;
    readonly LanHouse _lan;

    PairedHouse(string folder, WebApplication app, LanHouse lan, FakeClock clock) => (_folder, _app, _lan, Clock) = (folder, app, lan, clock);

    internal FakeClock Clock { get; }

    public Uri Desk { get; private set; } = null!;

    public Uri Lan => new($"https://127.0.0.1:{_lan.Port}/");

    public static async Task<PairedHouse> Open()
    {
        var folder = Directory.CreateTempSubdirectory("wm-pair-").FullName;
        var clock = FakeClock.Today();
        var options = new ServeOptions(0, Path.Combine(folder, "records.db"), HostProcess.FreePort(), [IPAddress.Loopback]);
        var lan = Serve.Lan(options, clock);
        var app = Serve.Build(options, await RecordRoom.Open(options.Database), lan, clock);
        await app.StartAsync();
        var addresses = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses;
        return new(folder, app, lan, clock) { Desk = new(addresses.Single(a => a.StartsWith("http:", StringComparison.Ordinal))) };
    }

    public HttpClient AtTheDesk() => new() { BaseAddress = Desk };

    /// <summary>A browser as the host sees it: it tells where a change comes from, and keeps cookies.</summary>
    /// <param name="byAnyName">It goes on though the certificate does not bear the name that it asks for.</param>
    public HttpClient Phone(CookieContainer? cookies = null, bool tellsOrigin = true, bool byAnyName = false)
    {
        var handler = new SocketsHttpHandler { CookieContainer = cookies ?? new() };
        handler.SslOptions.CertificateChainPolicy = new()
        {
            TrustMode = X509ChainTrustMode.CustomRootTrust,
            CustomTrustStore = { _lan.Trust!.Authority },
            RevocationMode = X509RevocationMode.NoCheck,
        };
        if (byAnyName) handler.SslOptions.RemoteCertificateValidationCallback = (_, _, _, wrong) => wrong is SslPolicyErrors.None or SslPolicyErrors.RemoteCertificateNameMismatch;
        var phone = new HttpClient(handler) { BaseAddress = Lan };
        if (tellsOrigin) phone.DefaultRequestHeaders.Add("Origin", Lan.GetLeftPart(UriPartial.Authority));
        return phone;
    }

    public async Task<PairingCode> Code()
    {
        using var desk = AtTheDesk();
        var response = await desk.PostAsync("api/pairing/code", null);
        return (await response.Content.ReadFromJsonAsync(PairJson.Default.PairingCode))!;
    }

    public static Task<HttpResponseMessage> Pair(HttpClient phone, string code, string name = "phone in the shed") =>
        phone.PostAsync("api/pairing", JsonContent.Create(new AskedToPair(code, name), PairJson.Default.AskedToPair));

    public async Task<HttpClient> PairedPhone(string name = "phone in the shed", CookieContainer? cookies = null)
    {
        var phone = Phone(cookies);
        (await Pair(phone, (await Code()).Digits, name)).EnsureSuccessStatusCode();
        return phone;
    }

    public async Task<ImmutableArray<DeviceShown>> Devices()
    {
        using var desk = AtTheDesk();
        return await desk.GetFromJsonAsync("api/devices", PairJson.Default.ImmutableArrayDeviceShown);
    }

    /// <summary>Everything the host keeps.</summary>
    public IEnumerable<string> Files() => Directory.EnumerateFiles(_folder, "*", SearchOption.AllDirectories);

    /// <summary>A file that the host may hold open.</summary>
    public static async Task<byte[]> Read(string file)
    {
        await using var open = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var bytes = new byte[open.Length];
        await open.ReadExactlyAsync(bytes);
        return bytes;
    }

    public static async Task<string> Why(HttpResponseMessage response) => (await response.Content.ReadFromJsonAsync(WireJson.Default.Refused))!.Refusal;

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
