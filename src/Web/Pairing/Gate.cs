using WitnessMark.Stores.Devices;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Hosting;

namespace WitnessMark.Web.Pairing;

/// <summary>An address of the API that answers a device which is not paired.</summary>
sealed class OpenToAll;

/// <summary>
/// Lets paired devices in. Whoever comes by the loopback listener is the person at the desk; that is told by the listener that took the
/// connection, never by what the request says of itself. Whatever came by any other way needs a key that is on record now.
/// </summary>
static class Gate
{
    const string Never = "This device is not paired with these records; open Devices on the host's own machine, ask for a code, and give it at /pair.";
    const string NoLonger = "This device was dropped from these records; pair it again at /pair. What waits on it is kept.";

    /// <summary>How often a device's last visit is noted, and how often its key is given anew so that it does not run out.</summary>
    static readonly TimeSpan Noted = TimeSpan.FromMinutes(1), Renewed = TimeSpan.FromDays(1);

    public static void UseGate(this WebApplication app) => app.Use(async (context, next) =>
    {
        if (!Guard.IsApi(context) || context.FromDesk)
        {
            await next();
            return;
        }
        var key = context.Request.Cookies[DeviceKey.Cookie];
        var hash = DeviceKey.HashOf(key);
        var devices = context.RequestServices.GetRequiredService<IDeviceStore>();
        var device = hash is null ? null : await devices.Holding(hash, context.RequestAborted);
        if (device is not null)
        {
            context.Features.Set(device);
            await Note(context, devices, device, key!);
        }
        else if (context.GetEndpoint()?.Metadata.GetMetadata<OpenToAll>() is null)
        {
            await Results.Json(new Refused(key is null ? Never : NoLonger), statusCode: StatusCodes.Status401Unauthorized).ExecuteAsync(context);
            return;
        }
        await next();
    });

    static async Task Note(HttpContext context, IDeviceStore devices, PairedDevice device, string key)
    {
        var now = context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow();
        if (now - device.SeenAt > Renewed) DeviceKey.Give(context.Response, key);
        if (now - device.SeenAt <= Noted) return;
        try
        {
            await devices.Seen(device.Id, now, context.RequestAborted);
        }
        catch (Exception e) when (DiskFaults.Tells(e))
        {
            // What a full disk still lets it read is not refused for want of a note.
        }
    }
}
