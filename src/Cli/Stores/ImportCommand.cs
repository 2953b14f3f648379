using System.Collections.Immutable;
using System.CommandLine;
using WitnessMark.FrontOffice.TakeInList;
using WitnessMark.Maths;
using WitnessMark.Records;
using WitnessMark.Stores;
using WitnessMark.Stores.Intake;

namespace WitnessMark.Cli.Stores;

/// <summary><c>wmark parts import</c></summary>
static class ImportCommand
{
    /// <summary>Refused rows and duplicates told one by one; the rest are counted.</summary>
    const int Told = 20;

    public static Command Build(Desk desk)
    {
        var file = Common.File("The list: CSV in any usual encoding, parted by commas, semicolons or tabs.");
        var db = Kept.Db();
        var vehicle = new Option<string>("--vehicle") { Description = "The vehicle's name.", Required = true };
        var map = new Option<string?>("--map") { Description = "What columns hold, where the head row does not say: \"Part No=reference,3=quantity\".", HelpName = "COLUMNS" };
        var separator = new Option<string?>("--separator") { Description = "What parts the cells, where it is guessed wrong: comma, semicolon, tab, bar." };
        var system = new Option<string>("--system") { Description = "The system of rows that name none.", DefaultValueFactory = _ => "" };
        var driver = new Option<string?>("--driver") { Description = "The side the driver sits on, LH or RH, where the list says near side and off side." };
        var doubles = new Option<DuplicateAnswer?>("--duplicates") { Description = "What to do with all rows that seem to be there already, instead of what is proposed for each." };
        var dry = new Option<bool>("--dry-run") { Description = "Only say what would be done." };
        var json = Common.Json();
        return Common.Command("import", "Takes a typed parts list into a vehicle, all or nothing.", "wmark parts import list.csv --db van.db --vehicle \"The van\" --dry-run",
            [file, db, vehicle, map, separator, system, driver, doubles, dry, json], async (parsed, stop) =>
        {
            var room = await Kept.Open(parsed.GetRequiredValue(db), stop);
            var tree = await Named(room, parsed.GetRequiredValue(vehicle), stop);
            var settings = new ListSettings(Separator(parsed.GetValue(separator)), null, parsed.GetRequiredValue(system), Driver(parsed.GetValue(driver)));
            var request = new TakeInListRequest(Desk.Read(parsed.GetRequiredValue(file)), tree, settings, DateOnly.FromDateTime(desk.Clock.GetLocalNow().DateTime));
            var preview = await TakeInList.Preview(request, null, stop);
            if (parsed.GetValue(map) is { } changed)
                preview = await TakeInList.Preview(request with { Settings = settings with { Map = preview.Map.With(changed, preview.Head).Value } }, null, stop);
            if (preview.Missing is { } missing) throw new RefusedException(new($"{missing.Sentence.TrimEnd('.')}, as in --map 2=part; {Columns(preview)}."));
            var answers = parsed.GetValue(doubles) is { } all ? preview.Duplicates.ToDictionary(d => d.Line, d => d.PartId is null && all == DuplicateAnswer.Update ? d.Proposed : all) : [];
            var taken = parsed.GetValue(dry)
                ? new TakenList(ListIntake.Changes(preview, tree, answers), new(0, []))
                : await TakeInList.Take(preview, tree, answers, room.Vehicles, stop);
            if (!taken.Applied.Done) throw new RefusedException(new(taken.Applied.Words));
            if (parsed.GetValue(json)) WriteJson(desk, preview, taken, parsed.GetValue(dry));
            else WriteWords(desk, preview, taken, parsed.GetValue(dry));
        });
    }

    static async Task<VehicleTree> Named(RecordRoom room, string name, CancellationToken stop)
    {
        var vehicles = await room.Vehicles.Vehicles(stop);
        var found = vehicles.FirstOrDefault(v => v.Row.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase)).Row
            ?? throw new RefusedException(Refusal.Of("vehicle", name, vehicles.IsEmpty ? "there is none in these records yet" : $"there is {string.Join(", ", vehicles.Select(v => v.Row.Name))}"));
        return (await room.Vehicles.Tree(found.Id, stop))!;
    }

    static string Columns(ListPreview preview) => $"the columns are {string.Join(", ", preview.Head.Select((name, i) => name == "" || name == $"{i + 1}" ? $"{i + 1}" : $"{i + 1} {name}"))}";

    static char? Separator(string? text) => text is null ? null
        : Separators.Read(text) ?? throw new RefusedException(Refusal.Of("separator", text, "give comma, semicolon, tab, bar or one sign"));

    static Hand Driver(string? text) => text?.Trim().ToUpperInvariant() switch
    {
        null => Hand.None,
        "LH" => Hand.LH,
        "RH" => Hand.RH,
        _ => throw new RefusedException(Refusal.Of("driver's side", text, "give LH or RH")),
    };

    static void WriteWords(Desk desk, ListPreview preview, TakenList taken, bool dry)
    {
        foreach (var words in preview.Words) desk.Out.WriteLine(words);
        Tell(desk, "Refused", preview.Refused, r => r.Sentence);
        Tell(desk, "There already", preview.Duplicates, d => $"line {d.Line}: {d.Why} Proposed: {d.Proposed.ToString().ToLowerInvariant()}.");
        desk.Out.WriteLine(dry ? $"Nothing was kept. It would be: {taken.Words}" : taken.Words);
    }

    static void Tell<T>(Desk desk, string what, ImmutableArray<T> rows, Func<T, string> words)
    {
        if (rows.IsEmpty) return;
        desk.Out.WriteLine($"{what}:");
        foreach (var row in rows.Take(Told)) desk.Out.WriteLine($"  {words(row)}");
        if (rows.Length > Told) desk.Out.WriteLine($"  and {rows.Length - Told} more");
    }

    static void WriteJson(Desk desk, ListPreview preview, TakenList taken, bool dry) => desk.WriteJson(new
    {
        preview.Encoding,
        Separator = Separators.Words(preview.Separator),
        Columns = preview.Head.Zip(preview.Map.Fields, (name, field) => new { Name = name, Holds = field.ToString().ToLowerInvariant() }),
        Rows = preview.Parts.Length,
        Refused = preview.Refused.Select(r => r.Sentence),
        Duplicates = preview.Duplicates.Select(d => new { d.Line, d.Why, Proposed = d.Proposed.ToString().ToLowerInvariant() }),
        Kept = !dry,
        taken.NewParts,
        taken.UpdatedParts,
        taken.NewSystems,
        taken.NewAssemblies,
    });
}
