using Microsoft.Net.Http.Headers;
using WitnessMark.FrontOffice.SharePictures;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Pictures;

namespace WitnessMark.Web.Api;

/// <summary>Pictures by the id that their content gives them; what an id names never changes.</summary>
static class PictureApi
{
    public const string Address = "/api/pictures";

    const string ForEver = "private, max-age=31536000, immutable";

    public static void MapPictures(this IEndpointRouteBuilder api)
    {
        api.MapPost("pictures", async (HttpRequest request, IPictureStore store, SmallQueue queue, CancellationToken stop) =>
        {
            var id = await store.Keep(request.Body, stop);
            queue.Add(id);
            return new KeptPicture(id);
        });
        api.MapGet("pictures/{id}", (string id, HttpResponse response, IPictureStore store) => Original(id, response, store));
        api.MapGet("pictures/{id}/small", (string id, HttpResponse response, SmallShelf shelf, CancellationToken stop) => Smaller(id, SmallSize.List, response, shelf, stop));
        api.MapGet("pictures/{id}/view", (string id, HttpResponse response, SmallShelf shelf, CancellationToken stop) => Smaller(id, SmallSize.View, response, shelf, stop));
        api.MapGet("pictures/{id}/clean", async (string id, PictureZip zip, CancellationToken stop) =>
            await zip.Clean(id, stop) is { } picture
                ? Results.Bytes(picture.Bytes, picture.MediaType, $"picture-{id[..8]}.{SharedPictures.Ending(picture.MediaType)}")
                : Answer.Found<Picture>(null, "picture"));
        api.MapGet("pictures/making", (SmallQueue queue) => queue.Standing());
        api.MapPost("pictures/making/pause", (SmallQueue queue) =>
        {
            queue.Pause();
            return queue.Standing();
        });
        api.MapPost("pictures/making/resume", (SmallQueue queue) =>
        {
            queue.GoOn();
            return queue.Standing();
        });
    }

    /// <summary>From the disk to the line, and no more of it in memory than a block.</summary>
    static IResult Original(string id, HttpResponse response, IPictureStore store)
    {
        if (store.Open(id) is not { } file) return Answer.Found<Picture>(null, "picture");
        var beginning = new byte[16];
        var kind = PictureKind.MediaType(beginning.AsSpan(0, file.ReadAtLeast(beginning, beginning.Length, throwOnEndOfStream: false))).Value;
        file.Position = 0;
        response.Headers.CacheControl = ForEver;
        return Results.Stream(file, kind, enableRangeProcessing: true, entityTag: new($"\"{id}\""));
    }

    static async Task<IResult> Smaller(string id, SmallSize size, HttpResponse response, SmallShelf shelf, CancellationToken stop)
    {
        if (await shelf.Find(id, size, stop) is not { } small) return Answer.Found<Picture>(null, "picture");
        if (small.Why is { } why)
        {
            response.Headers.CacheControl = "no-store";
            return Results.Bytes(Placeholder.Of(why), Placeholder.MediaType);
        }
        response.Headers.CacheControl = ForEver;
        return Results.Bytes(small.Jpeg, "image/jpeg", entityTag: new EntityTagHeaderValue($"\"{id}-{(int)size}\""));
    }
}
