using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.FrontOffice.MeasurePhoto;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>Pixels of a photograph that goes to the back room.</summary>
public sealed record PhotoSize(int Width, int Height);

/// <summary>The photograph that lies open in the back room. It stays there between clicks; a back room that was closed has none.</summary>
public static partial class Work
{
    /// <summary>Answered when no photograph lies open: lay it down and ask again.</summary>
    public const string NoPhoto = "";

    static OpenPhoto? s_open;

    /// <summary>Lays a photograph down in place of the one before.</summary>
    /// <param name="pixels">A byte of grey for each pixel by rows from the top, upright.</param>
    [JSExport]
    public static string LayPhoto(string size, byte[] pixels) => Answers.Of(() =>
    {
        var (width, height) = JsonSerializer.Deserialize(size, WorkJson.Default.PhotoSize)!;
        s_open = new(new Raster(width, height, 1, pixels));
        return "laid";
    });

    /// <summary>Finds the target and the camera, and shows the photograph true to scale.</summary>
    [JSExport]
    public static string MakePhotoTrue(string request) => Answers.Of(() => s_open is not { } open ? NoPhoto
        : JsonSerializer.Serialize(open.MakeTrue(JsonSerializer.Deserialize(request, WorkJson.Default.PhotoTrueAsked)!, new Told(0, 1)), WorkJson.Default.PhotoShown));

    /// <summary>What is at a place pointed out.</summary>
    [JSExport]
    public static string PickInPhoto(string request) => Answers.Of(() => s_open is not { } open ? NoPhoto
        : JsonSerializer.Serialize(open.Pick(JsonSerializer.Deserialize(request, WorkJson.Default.PickAsked)!), WorkJson.Default.PickAnswer));

    /// <summary>The way along an edge, as an SVG path.</summary>
    [JSExport]
    public static string TrailInPhoto(string places) => Answers.Of(() => s_open is not { } open ? NoPhoto
        : open.Trail(JsonSerializer.Deserialize(places, WorkJson.Default.ImmutableArrayVec2)));
}
