using System.CommandLine;
using WitnessMark.Cli.Planning;
using WitnessMark.FrontOffice.PrintTags;
using WitnessMark.PrintRoom.Tags;

namespace WitnessMark.Cli.Stores;

/// <summary><c>wmark tags</c></summary>
static class TagsCommand
{
    const string Device = "command line";

    public static Command Build(Desk desk)
    {
        var (kept, folder, json) = (new PlanOptions(), Common.Folder(), Common.Json());
        var grid = new Option<string>("--grid") { Description = $"Labels by their size in mm: {string.Join(", ", LabelGrid.Common.Select(g => g.Name))}, or a size with how many across and down on A4: 60x30,3x9.", DefaultValueFactory = _ => "63.5x38.1" };
        var start = new Option<int>("--start") { Description = "The first free label of the first sheet, from 1.", DefaultValueFactory = _ => 1 };
        var parts = new Option<string>("--parts") { Description = "all, undecided, or words in the name, reference or system.", DefaultValueFactory = _ => "all" };
        var places = new Option<bool>("--places") { Description = "Labels for shelves, bins and boxes in place of parts." };
        var address = new Option<string?>("--address") { Description = "Where the works answers on your network, so that a scanned tag opens it: https://192.168.1.20:5001." };
        return Common.Command("tags", "Label sheets with a code for each part or place. A thing keeps the code it has; print at 100 %.",
            "wmark tags --db van.db --parts undecided --grid 63.5x38.1 --start 1 --out tags", [.. kept.All, grid, start, parts, places, address, folder, json], async (parsed, stop) =>
            {
                var plan = await kept.Open(parsed, desk.Clock, stop);
                var (vehicle, now) = (plan.Tree.Vehicle.Row.Id, desk.Clock.GetUtcNow());
                var result = PrintTags.Run(new(
                    vehicle,
                    parsed.GetValue(places) ? [.. (await plan.Room.Desk.Places.Of(vehicle, stop)).Select(p => TagWanted.Of(p.Row))] : TagWanted.Parts(plan.Tree, parsed.GetRequiredValue(parts)),
                    await plan.Room.Desk.Tags.Of(vehicle, stop), LabelGrid.Read(parsed.GetRequiredValue(grid)).Value, parsed.GetValue(start), now, Device)
                {
                    Address = parsed.GetValue(address),
                });
                // Kept before they are printed: a tag nobody knows opens nothing.
                await plan.Room.Desk.Tags.Append(result.New, stop);
                var files = Common.WriteAll(parsed.GetRequiredValue(folder), [result.Pdf(now)]);
                if (parsed.GetValue(json)) desk.WriteJson(new { Tags = result.Tags.Select(t => new { t.Code, t.Words }), New = result.New.Length, Sheets = result.Sheets.Length, Files = files });
                else
                {
                    desk.Out.WriteLine($"{result.Tags.Length} labels on {result.Sheets.Length} sheets, {result.New.Length} codes new.");
                    foreach (var file in files) desk.Out.WriteLine(file);
                }
            });
    }
}
