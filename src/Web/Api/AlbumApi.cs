using Microsoft.AspNetCore.Http.Features;
using WitnessMark.FrontOffice.SharePictures;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Hosting;
using WitnessMark.Web.Pictures;

namespace WitnessMark.Web.Api;

/// <summary>The pictures of a vehicle as they stand now: found by part, words and month, and taken out as one file.</summary>
static class AlbumApi
{
    public static void MapAlbums(this IEndpointRouteBuilder api)
    {
        var album = api.MapGroup("vehicles/{vehicle:guid}/pictures");
        album.MapGet("", async (Guid vehicle, Guid? part, bool? none, string? words, string? month, int? skip, int? take, IPictureAlbums albums, CancellationToken stop) =>
            (await albums.Of(vehicle, stop)).Find(new(part, none ?? false, words ?? "", month, skip ?? 0, Taken(take ?? new PicturesAsked().Take))));
        album.MapGet("{taken:guid}", async (Guid vehicle, Guid taken, IPictureAlbums albums, IStoresDesk desk, CancellationToken stop) =>
            Answer.Found((await albums.Of(vehicle, stop)).One(taken) is { } one ? new PictureOpened(one, await Layer(vehicle, taken, desk, stop)) : null, "picture"));
        album.MapGet("{taken:guid}/marked", Marked);
        album.MapPost("exports", (Guid vehicle, ExportAsked asked, HttpContext context, PictureExports exports) =>
        {
            if (asked.Chosen.IsDefault) throw new RefusedException(Refusal.Of("chosen", null, "send a list, empty for all that fit"));
            if (asked.Originals && !context.FromDesk)
                throw new RefusedException(Refusal.Of("originals", "asked for from another device", "they leave the house only on the host's own machine; take the stripped ones"));
            return exports.Ask(vehicle, asked).Standing;
        });
        album.MapGet("exports/{id:guid}", (Guid vehicle, Guid id, PictureExports exports) => Answer.Found(exports.Find(vehicle, id)?.Standing, "export"));
        album.MapDelete("exports/{id:guid}", (Guid vehicle, Guid id, PictureExports exports) =>
        {
            var export = exports.Find(vehicle, id);
            export?.Stop();
            return Answer.Found(export?.Standing, "export");
        });
        album.MapGet("exports/{id:guid}/pictures.zip", Zip);
    }

    static int Taken(int take) => take is >= 1 and <= PicturesAsked.Most ? take
        : throw new RefusedException(Refusal.Of("take", $"{take}", $"ask for 1 to {PicturesAsked.Most} at once"));

    static async Task<IResult> Marked(Guid vehicle, Guid taken, IPictureAlbums albums, IStoresDesk desk, PictureZip zip, CancellationToken stop)
    {
        if ((await albums.Of(vehicle, stop)).One(taken) is not { } one) return Answer.Found<Picture>(null, "picture");
        var strokes = (await Layers(vehicle, desk, stop)).GetValueOrDefault(taken, "");
        return await zip.Marked(one.Row.Picture, strokes, stop) is { } jpeg
            ? Results.Bytes(jpeg, "image/jpeg", SharedPictures.Name(one.Row, 1, "image/jpeg").Replace("-00001", "-marked", StringComparison.Ordinal))
            : Answer.Found<Picture>(null, "picture");
    }

    static async Task<IResult> Zip(Guid vehicle, Guid id, HttpContext context, PictureExports exports, IPictureAlbums albums, IVehicleStore vehicles, IStoresDesk desk, PictureZip zip)
    {
        var stop = context.RequestAborted;
        if (exports.Find(vehicle, id) is not { } export || await vehicles.Tree(vehicle, stop) is not { } tree) return Answer.Found<Export>(null, "export");
        if (export.Asked.Originals && !context.FromDesk) return Answer.Found<Export>(null, "export");
        var chosen = export.Asked.Chosen.ToHashSet();
        var asked = new PicturesAsked(export.Asked.PartId, export.Asked.NoPart, export.Asked.Words ?? "", Take: int.MaxValue);
        PictureTaken[] rows = [.. (await albums.Of(vehicle, stop)).Find(asked).Rows.Where(r => chosen.Count == 0 || chosen.Contains(r.Id))];
        var names = tree.Parts.ToDictionary(p => p.Row.Id, p => p.Row.Hand == Hand.None ? p.Row.Name : $"{p.Row.Name} {p.Row.Hand}");
        var strokes = export.Asked.Marked ? await Layers(vehicle, desk, stop) : [];
        export.Begin(rows.Length);
        // A zip writes the head of each file without waiting; all else is written as the line takes it.
        if (context.Features.Get<IHttpBodyControlFeature>() is { } body) body.AllowSynchronousIO = true;
        return Results.Stream(async to =>
        {
            var whole = false;
            // Stopped on the page or by the browser: the line is cut, so that half a file is not taken for a whole one.
            using var cut = export.Stopped.Register(context.Abort);
            try
            {
                await zip.Write(to, rows, part => part is { } p ? names.GetValueOrDefault(p, "a part that is no longer listed") : "", strokes, export);
                whole = true;
            }
            finally
            {
                export.End(whole);
            }
        }, "application/zip", $"pictures-{export.At:yyyy-MM-dd}.zip");
    }

    static async Task<Versioned<PictureLayer>> Layer(Guid vehicle, Guid taken, IStoresDesk desk, CancellationToken stop) =>
        (await desk.PictureLayers.Of(vehicle, stop)).FirstOrDefault(l => l.Row.Id == taken) is { Row: not null } layer ? layer : new(new(taken, vehicle, ""), 0);

    static async Task<Dictionary<Guid, string>> Layers(Guid vehicle, IStoresDesk desk, CancellationToken stop) =>
        (await desk.PictureLayers.Of(vehicle, stop)).ToDictionary(l => l.Row.Id, l => l.Row.Strokes);
}
