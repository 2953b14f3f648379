using System.Net;
using System.Net.Sockets;
using System.Security.Authentication;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using WitnessMark.Maths;
using WitnessMark.Records;
using WitnessMark.Web.Api;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Pairing;
using WitnessMark.Web.Pairing.Trust;
using WitnessMark.Web.Pictures;

namespace WitnessMark.Web.Hosting;

/// <summary>Builds the host, says where it listens, and closes it cleanly.</summary>
public static class Serve
{
    /// <returns>0 after a clean stop; 2 when what was asked for is refused.</returns>
    public static async Task<int> Run(ServeAsked asked, CancellationToken stop)
    {
        var options = ServeOptions.Of(asked, HouseNet.OwnAddresses());
        if (options.Refusal is { } refusal) return await Refuse(refusal.Sentence);
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(options.Value.Database)!);
            var records = await RecordRoom.Open(options.Value.Database, stop);
            var lan = Lan(options.Value, TimeProvider.System);
            await using var app = Build(options.Value, records, lan, TimeProvider.System);
            await app.StartAsync(stop);
            // Nobody waits for it, and if it fails the first read says what is wrong.
            _ = Task.Run(() => records.WarmUp(stop), stop);
            foreach (var line in Lines(app, options.Value, lan)) Console.WriteLine(line);
            await app.WaitForShutdownAsync(stop);
            return 0;
        }
        catch (RefusedException e)
        {
            return await Refuse(e.Message);
        }
        catch (IOException e) when (e.InnerException is SocketException or Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            var ofLan = !options.Value.Lan.IsEmpty && e.Message.Contains($":{options.Value.LanPort}:", StringComparison.Ordinal);
            return await Refuse($"{(ofLan ? "--lan-port" : "--port")}: \"{(ofLan ? options.Value.LanPort : asked.Port)}\" is in use; close the other program or write another port.");
        }
    }

    /// <summary>The house's network with its certificate, when it is to be served. The keys lie in a folder beside the records.</summary>
    public static LanHouse Lan(ServeOptions options, TimeProvider clock) => options.Lan.IsEmpty ? LanHouse.None
        : new(HouseTrust.Open(new KeyFolder(options.Database + ".keys"), Environment.MachineName, options.Lan, clock.GetUtcNow()), options.LanPort, options.Lan);

    public static WebApplication Build(ServeOptions options, RecordRoom records, LanHouse lan, TimeProvider clock)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(Serve).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.WebHost.UseStaticWebAssets();
        // Where a request comes from is told by its connection; a header that claims otherwise is not heard, whatever the environment says.
        builder.Configuration["ForwardedHeaders_Enabled"] = "false";
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = Guard.LargestBody;
            kestrel.Limits.MaxRequestHeadersTotalSize = 16 << 10;
            kestrel.Limits.MaxRequestLineSize = 4 << 10;
            kestrel.Limits.MaxRequestHeaderCount = 60;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
            kestrel.Listen(IPAddress.Loopback, options.Port, listener => listener.MarkDesk());
            if (lan.Trust is not { } trust) return;
            foreach (var address in lan.Listening.Append(IPAddress.Loopback).Distinct())
                kestrel.Listen(address, lan.Port, listener => listener.UseHttps(trust.Host, https => https.SslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13));
        });
        builder.Logging.ClearProviders().AddSimpleConsole(c => c.SingleLine = true).SetMinimumLevel(LogLevel.Warning);
        builder.Services.Configure<HostOptions>(o => o.ShutdownTimeout = TimeSpan.FromSeconds(3));
        builder.Services.AddSingleton(clock).AddSingleton(lan).AddSingleton<CodeDesk>().AddSingleton(new Turnstile.Rates()).AddSingleton<Turnstile>();
        builder.Services.Configure<RouteHandlerOptions>(o => o.ThrowOnBadRequest = true);
        builder.Services.ConfigureHttpJsonOptions(o => WireJson.Set(o.SerializerOptions));
        builder.Services.AddSingleton(records.Vehicles).AddSingleton(records.Readings).AddSingleton(records.Bench).AddSingleton(records.Jobs)
            .AddSingleton(records.Hours).AddSingleton(records.Desk).AddSingleton(records.Pictures).AddSingleton(records.Albums).AddSingleton(records.Stamp).AddSingleton(records.Devices);
        builder.Services.AddPictures(RecordRoom.PicturesOf(records.Path));
        var app = builder.Build();
        // First, so that the gate knows which address is open to all.
        app.UseRouting();
        app.UseGuard();
        app.UseTurnstile();
        app.UseAnswers();
        app.UseGate();
        app.UseRemembered();
        app.MapStaticAssets();
        var api = app.MapGroup("/api");
        var reads = api.MapGroup("").Remembered();
        reads.MapVehicles();
        reads.MapSamples();
        reads.MapPlanning();
        reads.MapDesk();
        reads.MapHours();
        api.MapPictures();
        api.MapAlbums();
        api.MapPairing();
        api.MapDemo();
        api.MapFallback("{**rest}", () => Results.Json(new Refused("Nothing is kept at this address."), statusCode: StatusCodes.Status404NotFound));
        app.MapFallbackToFile("index.html");
        return app;
    }

    static IEnumerable<string> Lines(WebApplication app, ServeOptions options, LanHouse lan)
    {
        var here = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First(a => a.StartsWith("http:", StringComparison.Ordinal)) + "/";
        yield return $"Witness Mark is at {here}";
        if (lan.Trust is { } trust)
        {
            yield return $"On the house's network: {string.Join("  ", lan.Addresses)}   (pair a phone at {here}devices)";
            if (trust.AuthorityIsNew) yield return $"A new authority was made for it; phones trust it at /trust. SHA-256 {trust.Fingerprint}";
        }
        yield return $"Records: {options.Database}   (Ctrl+C closes)";
    }

    static async Task<int> Refuse(string sentence)
    {
        await Console.Error.WriteLineAsync(sentence);
        return 2;
    }
}
