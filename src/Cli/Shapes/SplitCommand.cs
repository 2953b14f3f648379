using System.CommandLine;
using WitnessMark.Cli.Drawing;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.FrontOffice.SplitPressing;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Shapes;

/// <summary><c>wmark split</c></summary>
static class SplitCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A pressing in JSON: points in space and faces; or a folded part as wmark blank reads it.");
        var (folder, json, paper, material, method, title) = (Common.Folder(), Common.Json(), DrawCommand.Paper(), Materialed.Option(), BlankCommand.Method(), new TitleOptions());
        var which = new Option<int>("--choice") { Description = "Which of the splits is printed, from 1.", DefaultValueFactory = _ => 1 };
        var seconds = Common.Number("--seconds", "Longest search, seconds; the best so far is given. 5 unless said.");
        var rule = new Option<string>("--plugs") { Description = "Rule for plug welds: usual, body, sheet or plate.", DefaultValueFactory = _ => "usual" };
        return Common.Command("split", "Splits a pressing into pieces that can be folded and welded with the least work: blanks, setting angles, welds in order, setting tools.",
            "wmark split demo/shapes/split-bracket.json --out drawings", [file, folder, which, rule, seconds, method, material, paper, .. title.All, json], parsed =>
            {
                var path = parsed.GetRequiredValue(file);
                var model = SplitPressing.Read(Desk.Read(path)).Value;
                var given = parsed.GetResult(seconds) is null ? 5 : parsed.GetValue(seconds);
                if (!(given is > 0 and <= 3600)) throw new RefusedException(Refusal.Of("--seconds", $"{given}", "give a number above 0, at most 3600"));
                using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(given), desk.Clock);
                var request = new SplitRequest(model) { Method = BendMethods.Read(parsed.GetRequiredValue(method)).Value, Plugs = Rule(parsed.GetRequiredValue(rule)) };
                var made = SplitPressing.Run(request, stop: stop.Token).Value;
                var chosen = parsed.GetValue(which) - 1;
                if (chosen < 0 || chosen >= made.Kits.Length) throw new RefusedException(Refusal.Of("--choice", $"{chosen + 1}", $"there are splits 1 to {made.Kits.Length}"));
                var (metal, now) = (Materialed.Named(parsed.GetRequiredValue(material)), desk.Clock.GetUtcNow());
                var print = new KitRequest(made.Kits[chosen], Path.GetFileNameWithoutExtension(path), title.Read(parsed, model.Pressing.Title, metal.Name, LengthWriter.Write(model.Pressing.Thickness), now), metal)
                {
                    Paper = DrawCommand.PaperOf(parsed.GetRequiredValue(paper)),
                    Created = now,
                };
                var files = Common.WriteAll(parsed.GetRequiredValue(folder), KitFiles.Of(print));
                if (parsed.GetValue(json)) desk.WriteJson(FabricationShape.Of(made, chosen, files));
                else Show(desk, made, chosen, files);
            });
    }

    static PlugRule? Rule(string word) => word.ToLowerInvariant() switch
    {
        "usual" => null,
        "body" => PlugRule.Body,
        "sheet" => PlugRule.Sheet,
        "plate" => PlugRule.Plate,
        _ => throw new RefusedException(Refusal.Of("--plugs", word, "write usual, body, sheet or plate")),
    };

    static void Show(Desk desk, SplitResult made, int chosen, List<string> files)
    {
        desk.Out.WriteLine($"{made.Model.Pressing.Title}: {made.Model.Faces.Length} faces, {made.Model.Joints.Length} joints");
        foreach (var (c, i) in made.Answer.Choices.Select((c, i) => (c, i)))
            desk.Out.WriteLine($"split {i + 1}: {c.Pieces.Length} {(c.Pieces.Length == 1 ? "piece" : "pieces")}, {c.Folded.Length} folds, {c.WeldLength:0} mm of weld, about {c.Work:0} minutes{(i == chosen ? "; printed" : "")}");
        desk.Out.WriteLine(made.Answer.Proven ? "No split is less work than the first." : $"Stopped early: no split takes under {made.Answer.Bound:0} minutes, the first may not be the best.");
        KitWords.Show(desk, made.Kits[chosen]);
        foreach (var file in files) desk.Out.WriteLine(file);
    }
}
