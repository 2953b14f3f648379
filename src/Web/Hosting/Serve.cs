using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using WitnessMark.Maths;
using WitnessMark.Records;
using WitnessMark.Web.Api;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Hosting;

/// <summary>Builds the host, says where it listens, and closes it cleanly.</summary>
public static class Serve
{
    /// <returns>0 after a clean stop; 2 when what was asked for is refused.</returns>
    public static async Task<int> Run(int port, string? database, string? address, CancellationToken stop)
    {
        var options = ServeOptions.Of(port, database, address, Environment.GetEnvironmentVariable("ASPNETCORE_URLS"));
        if (options.Refusal is { } refusal) return await Refuse(refusal.Sentence);
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(options.Value.Database)!);
            await using var app = Build(options.Value.Port, await RecordRoom.Open(options.Value.Database, stop));
            await app.StartAsync(stop);
            Console.WriteLine($"Witness Mark is at {Address(app)}");
            Console.WriteLine($"Records: {options.Value.Database}   (Ctrl+C closes)");
            await app.WaitForShutdownAsync(stop);
            return 0;
        }
        catch (RefusedException e)
        {
            return await Refuse(e.Message);
        }
        catch (IOException e) when (e.InnerException is SocketException or Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            return await Refuse($"--port: \"{port}\" is in use; close the other program or write another port.");
        }
    }

    public static WebApplication Build(int port, RecordRoom records)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(Serve).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = Guard.LargestBody;
            kestrel.Listen(IPAddress.Loopback, port);
        });
        builder.Logging.ClearProviders().AddSimpleConsole(c => c.SingleLine = true).SetMinimumLevel(LogLevel.Warning);
        builder.Services.Configure<HostOptions>(o => o.ShutdownTimeout = TimeSpan.FromSeconds(3));
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.Configure<RouteHandlerOptions>(o => o.ThrowOnBadRequest = true);
        builder.Services.ConfigureHttpJsonOptions(o => WireJson.Set(o.SerializerOptions));
        builder.Services.AddSingleton(records.Vehicles).AddSingleton(records.Readings).AddSingleton(records.Bench).AddSingleton(records.Jobs)
            .AddSingleton(records.Hours).AddSingleton(records.Desk).AddSingleton(records.Pictures);
        var app = builder.Build();
        app.UseGuard();
        app.UseAnswers();
        app.MapStaticAssets();
        var api = app.MapGroup("/api");
        api.MapVehicles();
        api.MapSamples();
        api.MapPlanning();
        api.MapDesk();
        api.MapHours();
        api.MapPictures();
        api.MapDemo();
        api.MapFallback("{**rest}", () => Results.Json(new Refused("Nothing is kept at this address."), statusCode: StatusCodes.Status404NotFound));
        app.MapFallbackToFile("index.html");
        return app;
    }

    static string Address(WebApplication app) =>
        app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First() + "/";

    static async Task<int> Refuse(string sentence)
    {
        await Console.Error.WriteLineAsync(sentence);
        return 2;
    }
}
