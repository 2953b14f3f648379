using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>Pictures by the id that their content gives them; what an id names never changes.</summary>
static class PictureApi
{
    public const string Address = "/api/pictures";

    public static void MapPictures(this IEndpointRouteBuilder api)
    {
        api.MapPost("pictures", async (HttpRequest request, IPictureStore store, CancellationToken stop) =>
            new KeptPicture(await store.Keep(await Read(request, stop), stop)));
        api.MapGet("pictures/{id}", async (string id, HttpResponse response, IPictureStore store, CancellationToken stop) =>
        {
            if (await store.Read(id, stop) is not { } picture) return Answer.Found<Picture>(null, "picture");
            response.Headers.CacheControl = "private, max-age=31536000, immutable";
            return Results.Bytes(picture.Bytes, picture.MediaType);
        });
    }

    static async Task<byte[]> Read(HttpRequest request, CancellationToken stop)
    {
        using var bytes = new MemoryStream();
        var block = new byte[81920];
        for (int n; (n = await request.Body.ReadAsync(block, stop)) > 0;)
        {
            bytes.Write(block, 0, n);
            if (bytes.Length > PictureKind.Largest)
                throw new RefusedException(Refusal.Of("picture", $"over {PictureKind.Largest / 1_000_000} MB", "take it at a smaller size"));
        }
        return bytes.ToArray();
    }
}
