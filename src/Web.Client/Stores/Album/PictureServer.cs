using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Stores.Album;

/// <summary>The albums of the host over HTTP.</summary>
public sealed class PictureServer(Server server)
{
    public static string Small(string picture) => $"api/pictures/{picture}/small";

    public static string View(string picture) => $"api/pictures/{picture}/view";

    public static string Original(string picture) => $"api/pictures/{picture}";

    /// <summary>Without what the camera wrote beside the pixels.</summary>
    public static string Clean(string picture) => $"api/pictures/{picture}/clean";

    /// <summary>With what is drawn on it.</summary>
    public static string Marked(Guid vehicle, Guid taken) => $"{Of(vehicle)}/{taken}/marked";

    public static string File(Guid vehicle, Guid export) => $"{Of(vehicle)}/exports/{export}/pictures.zip";

    public Task<Reply<PictureStretch>> Find(Guid vehicle, PicturesAsked asked) => server.Get(
        $"{Of(vehicle)}?skip={asked.Skip}&take={asked.Take}{(asked.PartId is { } part ? $"&part={part}" : "")}{(asked.NoPart ? "&none=true" : "")}"
        + $"{(asked.Words.Length > 0 ? $"&words={Uri.EscapeDataString(asked.Words)}" : "")}{(asked.Month is { Length: > 0 } month ? $"&month={month}" : "")}",
        DeskJson.Of<PictureStretch>());

    public Task<Reply<PictureOpened>> Open(Guid vehicle, Guid taken) => server.Get($"{Of(vehicle)}/{taken}", DeskJson.Of<PictureOpened>());

    public Task<Reply<PictureWork>> Work() => server.Get("api/pictures/making", DeskJson.Of<PictureWork>());

    public Task<Reply<PictureWork>> Work(bool pause) =>
        server.Send(HttpMethod.Post, $"api/pictures/making/{(pause ? "pause" : "resume")}", new ByteArrayContent([]), DeskJson.Of<PictureWork>());

    public Task<Reply<ExportStanding>> Ask(Guid vehicle, ExportAsked asked) =>
        server.Send(HttpMethod.Post, $"{Of(vehicle)}/exports", asked, DeskJson.Of<ExportAsked>(), DeskJson.Of<ExportStanding>());

    public Task<Reply<ExportStanding>> Standing(Guid vehicle, Guid export) => server.Get($"{Of(vehicle)}/exports/{export}", DeskJson.Of<ExportStanding>());

    public Task<Reply<ExportStanding>> Stop(Guid vehicle, Guid export) =>
        server.Send(HttpMethod.Delete, $"{Of(vehicle)}/exports/{export}", new ByteArrayContent([]), DeskJson.Of<ExportStanding>());

    static string Of(Guid vehicle) => $"api/vehicles/{vehicle}/pictures";
}
