using System.CommandLine;
using WitnessMark.Cli.Drawing;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.FrontOffice.CardJob;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.FrontOffice.DrawPart;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.PlanningOffice;
using WitnessMark.Trade;

namespace WitnessMark.Cli.Planning;

/// <summary><c>wmark job</c></summary>
static class JobCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A folded part in JSON, or the reading sheet or survey of a flat one.");
        var (folder, json, material, method) = (Common.Folder(), Common.Json(), Materialed.Option(), BlankCommand.Method());
        var thickness = new Option<string?>("--thickness") { Description = "Of a flat part: 16 SWG, 2 mm. A folded part says its own." };
        var quantity = new Option<int>("--quantity") { Description = "Pieces wanted.", DefaultValueFactory = _ => 1 };
        var hazards = new Option<Hazard[]>("--hazard") { Description = $"What the part itself brings: {string.Join(", ", Enum.GetNames<Hazard>())}.", AllowMultipleArgumentsPerToken = true };
        var part = new PartOptions();
        return Common.Command("job", "Writes the job card of a part: steps, stock, hours, money and cautions. With --db and --part it lands in the plan.",
            "wmark job demo/samples/lamp-bracket.json --material DC01 --db van.db --part 'Rear lamp bracket' --hand LH",
            [file, folder, material, thickness, quantity, hazards, method, .. part.All, json], async (parsed, stop) =>
            {
                var path = parsed.GetRequiredValue(file);
                var kept = await part.Open(parsed, stop);
                var request = Asked(path, Materialed.Named(parsed.GetRequiredValue(material)), parsed.GetValue(thickness), parsed.GetRequiredValue(method)) with
                {
                    Quantity = parsed.GetValue(quantity),
                    Hazards = [.. parsed.GetValue(hazards) ?? []],
                    Shop = kept?.Shop ?? Shop.Usual,
                    Reference = kept?.Reference ?? "",
                };
                var card = CardJob.Run(request);
                var now = desk.Clock.GetUtcNow();
                var sheets = card.Sheets(DateOnly.FromDateTime(now.UtcDateTime));
                var files = Common.WriteAll(parsed.GetRequiredValue(folder), [PrintOut.Pdf($"{Path.GetFileNameWithoutExtension(path)}-job-card", sheets, now)]);
                if (kept is not null) await kept.Land(card, stop);
                if (parsed.GetValue(json)) desk.WriteJson(new { card.Card, HoursTotal = card.Card.Hours, CostTotal = card.Card.Cost, card.Cautions, Files = files });
                else CardWords.Write(desk.Out, card, files);
            });
    }

    static CardRequest Asked(string path, Material material, string? thickness, string method)
    {
        var bytes = Desk.Read(path);
        if (IsFolded(path, bytes))
        {
            var tree = BracketFile.Read(bytes).Value;
            var cut = CutBlank.Run(new(tree, new TitleFields(tree.Title, "")) { Method = BendMethods.Read(method).Value, Metal = Materialed.DuctilityOf(material) });
            return new(tree.Title, "", cut.Part, tree.Thickness, material, Shop.Usual) { Bends = cut.Blank.BendLines };
        }
        if (thickness is null) throw new RefusedException(Refusal.Of("--thickness", null, "say how thick the sheet is, such as 16 SWG or 2 mm"));
        var sample = SampleFile.Read(bytes).Value;
        var plan = MeasureSample.Run(new MeasureRequest(sample) { Advise = false }).Plan;
        var title = sample.Title.Length > 0 ? sample.Title : sample.Id;
        var drawn = DrawPart.Run(new(sample, plan, new TitleFields(title, "")));
        return new(title, "", drawn.Part, Lengths.Read(thickness, TradeSpelling.Of(), "--thickness").Value.Mm, material, Shop.Usual) { MadeTo = drawn.MadeTo.MmOf };
    }

    /// <summary>Both kinds may be JSON; only a folded part has faces.</summary>
    static bool IsFolded(string path, byte[] bytes) =>
        path.EndsWith(".json", StringComparison.OrdinalIgnoreCase) && bytes.AsSpan().IndexOf("\"faces\""u8) >= 0;
}
