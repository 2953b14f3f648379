using System.Globalization;
using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Client.Outbox.Shelf;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>
/// Reads everything of one vehicle through the worker, which keeps it: the shed has no network, and all pages open there. Only what was
/// read; what was written lies in the tray.
/// </summary>
public sealed class WorkingSet(HttpClient http, Server server, DeskServer desk, HostStanding standing, PageScript page, BrowserShelf shelf, TimeProvider clock)
{
    /// <summary>Newest pictures whose small copies go along.</summary>
    const int MostPictures = 200;

    /// <summary>Asked for at once.</summary>
    const int Hands = 4;

    static readonly TimeSpan Old = TimeSpan.FromDays(1);

    CancellationTokenSource? _stop;

    /// <summary>How many of how many are read, and their bytes; null while nothing is being taken along.</summary>
    public (int Done, int Of, long Bytes)? Share { get; private set; }

    /// <summary>The vehicle that is being taken along.</summary>
    public Guid? Taking { get; private set; }

    public event Action? Changed;

    /// <summary>When this vehicle was taken along last, and how much it was, bytes.</summary>
    public (DateTimeOffset At, long Bytes)? Taken(Guid vehicle) =>
        page.Kept(Key(vehicle))?.Split(' ') is [var at, var bytes]
        && DateTimeOffset.TryParse(at, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out var when) && long.TryParse(bytes, CultureInfo.InvariantCulture, out var size)
            ? (when, size) : null;

    public void Stop() => _stop?.Cancel();

    /// <returns>Why not; null when all of it lies here.</returns>
    public async Task<string?> Take(Guid vehicle)
    {
        if (!shelf.KeepsReading()) return "This browser keeps no pages for this address yet: it does on https and on this machine itself. Load the page once more and try again.";
        if (_stop is not null) return "It is being taken along already.";
        var stop = _stop = new();
        try
        {
            Taking = vehicle;
            Told((0, 1, 0));
            if (await Addresses(vehicle) is not { } addresses) return "The host does not answer; nothing was taken along. Try again when it is back.";
            var bytes = await Read(addresses, stop.Token);
            page.Keep(Key(vehicle), string.Create(CultureInfo.InvariantCulture, $"{clock.GetUtcNow():O} {bytes}"));
            return null;
        }
        catch (HttpRequestException)
        {
            return "The host went away before all was read; what came is kept. Take it along once more when it is back.";
        }
        catch (OperationCanceledException)
        {
            return "Stopped; what came is kept.";
        }
        finally
        {
            (_stop, Taking) = (null, null);
            Told(null);
        }
    }

    /// <summary>Renews quietly what was taken along more than a day ago.</summary>
    public async Task Renew()
    {
        var vehicles = (await server.Vehicles()).Value;
        if (vehicles.IsDefault || standing.AsOf is not null) return;
        foreach (var vehicle in vehicles)
            if (Taken(vehicle.Row.Id) is { } taken && clock.GetUtcNow() - taken.At > Old) await Take(vehicle.Row.Id);
    }

    /// <summary>Lets go of everything that was only read; what waits to be sent stays.</summary>
    public async Task Forget()
    {
        foreach (var key in page.KeysUnder(Prefix)) page.Forget(key);
        await shelf.ForgetRead();
    }

    async Task<IReadOnlyList<string>?> Addresses(Guid vehicle)
    {
        var tree = await server.Tree(vehicle);
        // One that was begun here lies here anyway, and is not with the host yet.
        if (tree.Value is not { Vehicle.Version: > 0 } t || tree.AsOf is not null) return null;
        var pictures = (await desk.Newest<PictureTaken>(vehicle, new(Take: MostPictures))).Value?.Rows ?? [];
        var all = $"api/vehicles/{vehicle}";
        return
        [
            "api/vehicles", "api/shop", "api/instruments", "api/calendar", $"{all}/jobs", $"{all}/milestones", $"{all}/means", $"{all}/order", $"{all}/hours",
            .. Kinds.OfDesk.Select(k => Kinds.Desk(k, vehicle)),
            .. t.Samples.Where(s => s.Version > 0).Select(s => $"api/samples/{s.Row.Id}"),
            .. pictures.Select(p => $"api/pictures/{p.Picture}/small").Distinct(),
        ];
    }

    async Task<long> Read(IReadOnlyList<string> addresses, CancellationToken stop)
    {
        var (next, done, bytes) = (0, 0, 0L);
        async Task Hand()
        {
            while (next < addresses.Count)
            {
                var address = addresses[next++];
                using var reply = await http.GetAsync(address, stop);
                // A picture whose small copy is not made yet is no reason to leave the rest behind.
                if (!reply.IsSuccessStatusCode && !address.StartsWith("api/pictures/", StringComparison.Ordinal)) throw new HttpRequestException($"{address}: {(int)reply.StatusCode}");
                if (reply.Headers.Contains(Server.KeptAt)) throw new HttpRequestException($"{address}: a copy");
                bytes += (await reply.Content.ReadAsByteArrayAsync(stop)).Length;
                Told((++done, addresses.Count, bytes));
            }
        }
        await Task.WhenAll(Enumerable.Range(0, Hands).Select(_ => Hand()));
        return bytes;
    }

    void Told((int, int, long)? share)
    {
        Share = share;
        Changed?.Invoke();
    }

    const string Prefix = "wm.along.";

    static string Key(Guid vehicle) => $"{Prefix}{vehicle:N}";
}
