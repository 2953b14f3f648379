using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Stores.Album.Going;

/// <summary>Files of pictures that the browser is fetching, whichever page is open meanwhile.</summary>
public sealed class Exports(PictureServer server, PictureScript script, TimeProvider clock)
{
    static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(700);

    readonly Dictionary<Guid, ExportStanding> _standing = [];
    readonly Dictionary<Guid, Guid> _vehicles = [];

    public event Action? Changed;

    public IReadOnlyList<ExportStanding> Of(Guid vehicle) => [.. _standing.Values.Where(s => _vehicles[s.Id] == vehicle)];

    /// <returns>Why not; null when it is on its way.</returns>
    public async Task<string?> Ask(Guid vehicle, PicturesAsked asked, IEnumerable<Guid> chosen, bool originals, bool marked)
    {
        var wanted = new ExportAsked(Guid.CreateVersion7(clock.GetUtcNow()), asked.PartId, asked.NoPart, asked.Words, [.. chosen], originals, marked);
        var reply = await server.Ask(vehicle, wanted);
        if (reply.Value is not { } standing) return reply.Refusal ?? "The host does not answer; nothing was fetched. Try again when it is back.";
        _vehicles[standing.Id] = vehicle;
        await script.Save(PictureServer.File(vehicle, standing.Id));
        _ = Watch(vehicle, standing);
        return null;
    }

    public async Task Stop(Guid vehicle, Guid export)
    {
        if ((await server.Stop(vehicle, export)).Value is { } standing) Told(standing);
    }

    async Task Watch(Guid vehicle, ExportStanding standing)
    {
        for (Told(standing); standing.State is "waiting" or "running"; Told(standing))
        {
            await Task.Delay(Beat, clock);
            var reply = await server.Standing(vehicle, standing.Id);
            if (reply.Refusal is not null) standing = standing with { State = "stopped" };
            else standing = reply.Value ?? standing;
        }
    }

    void Told(ExportStanding standing)
    {
        _standing[standing.Id] = standing;
        Changed?.Invoke();
    }
}
