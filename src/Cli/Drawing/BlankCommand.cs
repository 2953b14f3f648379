using System.CommandLine;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Drawing;

/// <summary><c>wmark blank</c></summary>
static class BlankCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A folded part in JSON: faces and bends.");
        var (folder, json, title, paper) = (Common.Folder(), Common.Json(), new TitleOptions(), DrawCommand.Paper());
        var (method, material) = (Method(), Materialed.Option());
        return Common.Command("blank", "Develops a folded part into its flat blank: drawing, DXF, 1:1 template and a picture of it folded.",
            "wmark blank demo/samples/lamp-bracket.json --material DC01 --out drawings", [file, folder, method, material, paper, .. title.All, json], parsed =>
            {
                var path = parsed.GetRequiredValue(file);
                var tree = BracketFile.Read(Desk.Read(path)).Value;
                var metal = Materialed.Named(parsed.GetRequiredValue(material));
                var now = desk.Clock.GetUtcNow();
                var cut = CutBlank.Run(new(tree, title.Read(parsed, tree.Title, metal.Name, LengthWriter.Write(tree.Thickness), now))
                {
                    Method = BendMethods.Read(parsed.GetRequiredValue(method)).Value,
                    Metal = Materialed.DuctilityOf(metal),
                });
                var files = Common.WriteAll(parsed.GetRequiredValue(folder), cut.Files(Path.GetFileNameWithoutExtension(path), DrawCommand.PaperOf(parsed.GetRequiredValue(paper)), now));
                if (parsed.GetValue(json)) desk.WriteJson(BlankShape.Of(cut, files));
                else Show(desk, cut, files);
            });
    }

    public static Option<string> Method() => new("--allowance") { Description = $"Bend allowance: {BendMethods.Words}.", DefaultValueFactory = _ => "din6935" };

    static void Show(Desk desk, CutResult cut, List<string> files)
    {
        var box = cut.Part.Bounds;
        desk.Out.WriteLine($"{cut.Tree.Title}: blank {LengthWriter.Write(box.Width)} × {LengthWriter.Write(box.Height)}, {LengthWriter.Write(cut.Tree.Thickness)} thick");
        foreach (var line in cut.Blank.BendLines)
            desk.Out.WriteLine($"bend {line.Id}: {Math.Abs(line.Angle) * 180 / Math.PI:0.#}° {(line.Angle > 0 ? "up" : "down")}, inside radius {LengthWriter.Write(line.InsideRadius)}, allowance {LengthWriter.Write(line.Allowance.Length, LengthStyle.Millimetres(3))} ({line.Allowance.Method})");
        foreach (var (step, i) in (cut.Order?.Steps ?? []).Select((s, i) => (s, i))) desk.Out.WriteLine($"fold {i + 1}: {step.Words}");
        foreach (var caution in cut.Cautions) desk.Out.WriteLine($"! {caution.Words}");
        foreach (var file in files) desk.Out.WriteLine(file);
    }
}
