using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.Cli.Stores.Pictures;

/// <summary><c>wmark picture</c></summary>
static class PictureCommand
{
    const string Device = "command line";

    public static Command Build(Desk desk) => new("picture", "The album of a vehicle: what is in it, pictures in, and pictures out.")
    {
        List(desk),
        Add(desk),
        ExportPictures.Build(desk),
    };

    public static Option<string> Words(string does) => new("--words") { Description = does, DefaultValueFactory = _ => "" };

    static Command List(Desk desk)
    {
        var (which, words, json) = (new PictureOptions(), Words("Only those with all of these words in what is said of them."), Common.Json());
        return Common.Command("list", "Lists the pictures of a vehicle or of one part, the newest first.",
            "wmark picture list --db van.db --part 'Dynamo mounting plate'", [.. which.All, words, json], async (parsed, stop) =>
            {
                var kept = await which.Open(parsed, stop);
                var rows = kept.Fitting(parsed.GetRequiredValue(words));
                if (parsed.GetValue(json)) desk.WriteJson(new { Pictures = rows.Select(r => Told(kept, r)) });
                else if (rows.IsEmpty) desk.Out.WriteLine("no picture fits");
                else foreach (var row in rows) desk.Out.WriteLine(Line(kept, row));
            });
    }

    static Command Add(Desk desk)
    {
        var files = new Argument<string[]>("FILES") { Description = "JPEG, PNG or WebP.", Arity = ArgumentArity.OneOrMore };
        var (which, words, json) = (new PictureOptions(), Words("What they show."), Common.Json());
        return Common.Command("add", "Takes pictures into the album. The files stay as they are; a picture that is there already is not taken twice.",
            "wmark picture add demo/photos/horn-plate.jpg --db van.db --part 'Dynamo mounting plate' --words 'plate, front'", [files, .. which.All, words, json], async (parsed, stop) =>
            {
                var kept = await which.Open(parsed, stop);
                var paths = parsed.GetRequiredValue(files);
                // All are looked at before the first is kept: of a list with one bad file nothing is taken.
                foreach (var path in paths) Looked(path);
                var there = kept.Fitting("").Where(r => r.PartId == kept.Part?.Id).Select(r => r.Picture).ToHashSet();
                var taken = ImmutableArray.CreateBuilder<PictureTaken>();
                foreach (var path in paths)
                {
                    var bytes = Desk.Read(path, PictureKind.Largest);
                    var id = await kept.Room.Pictures.Keep(bytes, stop);
                    if (there.Add(id)) taken.Add(Fact(kept, id, bytes, path, parsed.GetRequiredValue(words).Trim(), desk.Clock));
                }
                await kept.Room.Desk.PicturesTaken.Append(taken.ToImmutable(), stop);
                if (parsed.GetValue(json)) desk.WriteJson(new { Added = taken.Select(r => Told(kept, r)), AlreadyThere = paths.Length - taken.Count });
                else
                {
                    foreach (var row in taken) desk.Out.WriteLine(Line(kept, row));
                    desk.Out.WriteLine($"{taken.Count} added{(paths.Length > taken.Count ? $", {paths.Length - taken.Count} there already" : "")}.");
                }
            });
    }

    static void Looked(string path)
    {
        if (PictureHead.Read(Desk.Read(path, PictureKind.Largest)).Refusal is { } wrong) throw new RefusedException(new($"{path}: {wrong.Sentence}"));
    }

    /// <summary>When it was taken, by the camera, else by the file.</summary>
    static PictureTaken Fact(KeptPictures kept, string id, byte[] bytes, string path, string words, TimeProvider clock)
    {
        var now = clock.GetLocalNow();
        var at = PictureHead.Taken(bytes)?.Sane(now) ?? CameraTime.Sane(new(File.GetLastWriteTime(path)), now) ?? now;
        var fact = new PictureTaken(Guid.CreateVersion7(clock.GetUtcNow()), kept.Vehicle, kept.Part?.Id, id, words, at, Device);
        return fact.Wrong() is { } wrong ? throw new RefusedException(wrong) : fact;
    }

    static object Told(KeptPictures kept, PictureTaken row) => new { row.Id, Taken = row.At, Part = kept.NameOf(row.PartId), row.Words, row.Picture };

    static string Line(KeptPictures kept, PictureTaken row) => string.Create(CultureInfo.InvariantCulture,
        $"{row.At:yyyy-MM-dd HH:mm}  {row.Picture[..12]}  {(row.PartId is null ? "the vehicle" : kept.NameOf(row.PartId))}{(row.Words.Length > 0 ? $": {row.Words}" : "")}");
}
