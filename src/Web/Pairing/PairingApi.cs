using System.Collections.Immutable;
using System.Security.Cryptography.X509Certificates;
using WitnessMark.Maths;
using WitnessMark.Stores.Devices;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Hosting;

namespace WitnessMark.Web.Pairing;

/// <summary>How a device comes to be paired, and the list of those that are.</summary>
static class PairingApi
{
    public static void MapPairing(this IEndpointRouteBuilder api)
    {
        api.MapGet("pairing", House).WithMetadata(new OpenToAll());
        api.MapGet("pairing/authority.crt", Authority).WithMetadata(new OpenToAll());
        api.MapPost("pairing", Pair).WithMetadata(new OpenToAll());
        api.MapPost("pairing/code", (CodeDesk codes, LanHouse lan) => Code(codes, lan));
        api.MapGet("pairing/code", (CodeDesk codes) => codes.State);
        api.MapDelete("pairing/code", (CodeDesk codes) =>
        {
            codes.Withdraw();
            return codes.State;
        });
        api.MapGet("devices", List);
        api.MapPut("devices/{id:guid}", async (Guid id, DeviceName name, IDeviceStore devices, CancellationToken stop) =>
            await devices.Rename(id, name.Name.Trim(), stop) ? Results.Ok(new Recorded(1)) : NoSuchDevice);
        api.MapDelete("devices/{id:guid}", async (Guid id, IDeviceStore devices, CancellationToken stop) =>
            await devices.Drop(id, stop) ? Results.Ok(new Recorded(1)) : NoSuchDevice);
    }

    static IResult NoSuchDevice => Results.Json(new Refused("There is no such device; it may have been dropped meanwhile."), statusCode: StatusCodes.Status404NotFound);

    static HouseShown House(HttpContext context, LanHouse lan) =>
        new([.. lan.Addresses], lan.Trust?.Name, lan.Trust?.Fingerprint, lan.Trust?.Authority.NotAfter, context.FromDesk, context.Device?.Name);

    /// <summary>DER, under the media type at which phones offer to install it.</summary>
    static IResult Authority(LanHouse lan) => lan.Trust is { } trust
        ? Results.File(trust.Authority.Export(X509ContentType.Cert), "application/x-x509-ca-cert", "witness-mark-authority.crt")
        : Results.Json(new Refused("This host serves its own machine alone and has no authority; start it with --lan."), statusCode: StatusCodes.Status404NotFound);

    static PairingCode Code(CodeDesk codes, LanHouse lan)
    {
        if (lan.Addresses.FirstOrDefault() is not { } first)
            throw new RefusedException(new("A device can only be paired while the host serves the house's network; close it and start it with --lan."));
        var (digits, until) = codes.New();
        return new(digits, $"{first}/pair#{digits}", until);
    }

    static async Task<IResult> Pair(AskedToPair asked, HttpContext context, CodeDesk codes, IDeviceStore devices, TimeProvider clock, CancellationToken stop)
    {
        if (context.FromDesk) throw new RefusedException(new("This is the host's own machine, which needs no pairing."));
        var name = asked.Name.Trim();
        if (PairedDevice.WrongName(name) is { } unfit) throw new RefusedException(unfit);
        var tried = codes.Try(asked.Code);
        if (tried.Wait > TimeSpan.Zero) return Turnstile.TooMany(context, tried.Wait, tried.Why!.Sentence);
        if (tried.Why is { } why) throw new RefusedException(why);
        var (key, now) = (DeviceKey.New(), clock.GetUtcNow());
        var device = new PairedDevice(Guid.CreateVersion7(now), name, DeviceKey.HashOf(key)!, now, now);
        await devices.Pair(device, stop);
        // Paired once more: the key it had is void.
        if (context.Device is { } before) await devices.Drop(before.Id, stop);
        DeviceKey.Give(context.Response, key);
        return Results.Ok(Shown(device, device));
    }

    static async Task<ImmutableArray<DeviceShown>> List(HttpContext context, IDeviceStore devices, CancellationToken stop) =>
        [.. (await devices.All(stop)).Select(d => Shown(d, context.Device))];

    static DeviceShown Shown(PairedDevice device, PairedDevice? asking) => new(device.Id, device.Name, device.PairedAt, device.SeenAt, device.Id == asking?.Id);
}
