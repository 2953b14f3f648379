using System.CommandLine;
using WitnessMark.FrontOffice.SharePictures;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.Cli.Stores.Pictures;

/// <summary><c>wmark picture export</c></summary>
static class ExportPictures
{
    public static Command Build(Desk desk)
    {
        var (which, words, folder, json) = (new PictureOptions(), PictureCommand.Words("Only those with all of these words in what is said of them."), Common.Folder(), Common.Json());
        return Common.Command("export", "Writes pictures into a folder, with a list beside them. Where they were taken and the camera's numbers stay here.",
            "wmark picture export --db van.db --part 'Dynamo mounting plate' --out pictures", [.. which.All, words, folder, json], async (parsed, stop) =>
            {
                var kept = await which.Open(parsed, stop);
                var rows = kept.Fitting(parsed.GetRequiredValue(words));
                if (rows.IsEmpty) throw new RefusedException(Refusal.Of("pictures", "none that fits", "use fewer words, or leave out the part"));
                var to = parsed.GetRequiredValue(folder);
                var shared = new List<SharedPicture>();
                foreach (var row in rows) shared.Add(await Write(kept, row, shared.Count + 1, to, stop));
                var list = Desk.Write(Path.Combine(to, SharedPictures.List), SharedPictures.Csv(shared));
                if (parsed.GetValue(json)) desk.WriteJson(new { Written = shared.Count(s => s.File.Length > 0), LeftOut = shared.Where(s => s.File.Length == 0).Select(s => s.Remark), List = list });
                else
                {
                    foreach (var left in shared.Where(s => s.File.Length == 0)) desk.Out.WriteLine($"! {left.Row.At:yyyy-MM-dd}: {left.Remark}");
                    desk.Out.WriteLine($"{shared.Count(s => s.File.Length > 0)} of {shared.Count} pictures, listed in {list}");
                }
            });
    }

    /// <summary>One that cannot go out is listed with why, and does not hold up the others.</summary>
    static async Task<SharedPicture> Write(KeptPictures kept, PictureTaken row, int number, string folder, CancellationToken stop)
    {
        var part = kept.NameOf(row.PartId);
        if (await kept.Room.Pictures.Read(row.Picture, stop) is not Picture picture) return new("", row, part, "left out: the picture is no longer kept");
        try
        {
            var name = SharedPictures.Name(row, number, picture.MediaType);
            Desk.Write(Path.Combine(folder, name), PictureStrip.Of(picture.Bytes.Span));
            return new(name, row, part);
        }
        catch (RefusedException e) when (PictureHead.Read(picture.Bytes.Span).Refusal is not null)
        {
            return new("", row, part, $"left out: {e.Message}");
        }
    }
}
