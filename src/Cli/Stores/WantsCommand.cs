using System.CommandLine;
using WitnessMark.FrontOffice.ShareWants;
using WitnessMark.Stores;

namespace WitnessMark.Cli.Stores;

/// <summary><c>wmark wants</c></summary>
static class WantsCommand
{
    public static Command Build(Desk desk)
    {
        var (db, folder, json) = (Kept.Db(), Common.Folder(), Common.Json());
        var vehicle = new Option<string>("--vehicle") { Description = "Name of the vehicle; it is not printed.", Required = true };
        var contact = new Option<string>("--contact") { Description = "How to answer, printed as it stands.", DefaultValueFactory = _ => "" };
        var conditions = new Option<bool>("--conditions") { Description = "Print the condition of the parts at hand too." };
        return Common.Command("wants", "Writes the list of wanted parts to hand out, as a web page and a table, with nothing private in it.",
            "wmark wants --db van.db --vehicle 'Quillbeck van' --out wants", [db, vehicle, folder, contact, conditions, json], async (parsed, stop) =>
            {
                var tree = (await Kept.Vehicles(parsed.GetRequiredValue(db), parsed.GetRequiredValue(vehicle), stop))[0];
                var choice = new WantsChoice(DateOnly.FromDateTime(desk.Clock.GetUtcNow().UtcDateTime))
                {
                    Contact = parsed.GetRequiredValue(contact),
                    Conditions = parsed.GetValue(conditions),
                };
                var list = Wants.Of(tree.Vehicle.Row, tree.Parts.Select(p => p.Row), choice);
                var files = Common.WriteAll(parsed.GetRequiredValue(folder), [ShareWants.Html(list), ShareWants.Csv(list)]);
                if (parsed.GetValue(json)) desk.WriteJson(new { list.For, Parts = list.Wants.Length, Pieces = list.Wants.Sum(w => (long)w.Quantity), Files = files });
                else desk.Out.WriteLine($"{list.Wants.Length} wanted parts: {string.Join(", ", files)}");
            });
    }
}
