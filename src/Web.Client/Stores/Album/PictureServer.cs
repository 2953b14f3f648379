using System.Collections.Immutable;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Outbox.Shelf;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Stores.Album;

/// <summary>The albums of the host over HTTP; while it is away, of what lies on this device.</summary>
public sealed class PictureServer(Server server, DeskServer desk, Tray tray)
{
    public static string Small(string picture) => $"api/pictures/{picture}/small";

    public static string View(string picture) => $"api/pictures/{picture}/view";

    public static string Original(string picture) => $"api/pictures/{picture}";

    /// <summary>Without what the camera wrote beside the pixels.</summary>
    public static string Clean(string picture) => $"api/pictures/{picture}/clean";

    /// <summary>With what is drawn on it.</summary>
    public static string Marked(Guid vehicle, Guid taken) => $"{Of(vehicle)}/{taken}/marked";

    public static string File(Guid vehicle, Guid export) => $"{Of(vehicle)}/exports/{export}/pictures.zip";

    /// <summary>What waits here is not in the host's answer; those are asked for by <see cref="Waiting"/>.</summary>
    public async Task<Reply<PictureStretch>> Find(Guid vehicle, PicturesAsked asked)
    {
        var reply = await server.Get(
            $"{Of(vehicle)}?skip={asked.Skip}&take={asked.Take}{(asked.PartId is { } part ? $"&part={part}" : "")}{(asked.NoPart ? "&none=true" : "")}"
            + $"{(asked.Words.Length > 0 ? $"&words={Uri.EscapeDataString(asked.Words)}" : "")}{(asked.Month is { Length: > 0 } month ? $"&month={month}" : "")}",
            DeskJson.Of<PictureStretch>());
        return reply.Away && await Here(vehicle, waiting: false) is { } album ? new(album.Find(asked), false, null) : reply;
    }

    public async Task<Reply<PictureOpened>> Open(Guid vehicle, Guid taken)
    {
        var reply = tray.IsWaiting(taken) ? new(null, true, null) : await server.Get($"{Of(vehicle)}/{taken}", DeskJson.Of<PictureOpened>());
        // A copy of the host's answer does not have the words that wait here, and no answer has the neighbours that wait.
        var fresh = reply is { Away: false, AsOf: null } && Own<PictureTaken>(vehicle).IsEmpty;
        return !fresh && (await Here(vehicle, waiting: true))?.One(taken) is { } one ? new(new(one, await Layer(vehicle, taken)), false, null, reply.AsOf) : reply;
    }

    /// <summary>Those that fit and wait on this device, the newest first.</summary>
    public ImmutableArray<PictureTaken> Waiting(Guid vehicle, PicturesAsked asked) =>
        new PictureAlbum(Own<PictureTaken>(vehicle), Own<PictureSaid>(vehicle)).Find(asked with { Month = null, Skip = 0, Take = PicturesAsked.Most }).Rows;

    public Task<Reply<PictureWork>> Work() => server.Get("api/pictures/making", DeskJson.Of<PictureWork>());

    public Task<Reply<PictureWork>> Work(bool pause) =>
        server.Send(HttpMethod.Post, $"api/pictures/making/{(pause ? "pause" : "resume")}", new ByteArrayContent([]), DeskJson.Of<PictureWork>());

    public Task<Reply<ExportStanding>> Ask(Guid vehicle, ExportAsked asked) =>
        server.Send(HttpMethod.Post, $"{Of(vehicle)}/exports", asked, DeskJson.Of<ExportAsked>(), DeskJson.Of<ExportStanding>());

    public Task<Reply<ExportStanding>> Standing(Guid vehicle, Guid export) => server.Get($"{Of(vehicle)}/exports/{export}", DeskJson.Of<ExportStanding>());

    public Task<Reply<ExportStanding>> Stop(Guid vehicle, Guid export) =>
        server.Send(HttpMethod.Delete, $"{Of(vehicle)}/exports/{export}", new ByteArrayContent([]), DeskJson.Of<ExportStanding>());

    /// <summary>Of the facts as they were read last; null when nothing is known here.</summary>
    /// <param name="waiting">With those that wait.</param>
    async Task<PictureAlbum?> Here(Guid vehicle, bool waiting)
    {
        var (taken, said) = ((await desk.Facts<PictureTaken>(vehicle)).Value, (await desk.Facts<PictureSaid>(vehicle)).Value);
        var rows = taken.IsDefault ? Own<PictureTaken>(vehicle) : taken;
        if (taken.IsDefault && rows.IsEmpty) return null;
        return new(waiting ? rows : rows.RemoveAll(r => tray.IsWaiting(r.Id)), said.IsDefault ? Own<PictureSaid>(vehicle) : said);
    }

    async Task<Versioned<PictureLayer>> Layer(Guid vehicle, Guid taken) =>
        (await desk.Decisions<PictureLayer>(vehicle)).Value is { IsDefault: false } layers && layers.FirstOrDefault(l => l.Row.Id == taken) is { Row: not null } layer
            ? layer : new(new(taken, vehicle, ""), 0);

    ImmutableArray<T> Own<T>(Guid vehicle) where T : class, IFact => Overlay.Facts<T>([], vehicle, tray.Lying, tray.Lying, copy: false);

    static string Of(Guid vehicle) => $"api/vehicles/{vehicle}/pictures";
}
