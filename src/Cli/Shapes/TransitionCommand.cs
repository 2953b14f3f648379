using System.CommandLine;
using WitnessMark.Cli.Drawing;
using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.FrontOffice.DevelopTransition;

namespace WitnessMark.Cli.Shapes;

/// <summary><c>wmark transition</c></summary>
static class TransitionCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A cone, transition, elbow, saddle or mitre in JSON.");
        var (folder, json, paper) = (Common.Folder(), Common.Json(), DrawCommand.Paper());
        return Common.Command("transition", "Lays out cones, square-to-rounds and other transitions, segmented bends, saddles and mitres of tube.",
            "wmark transition demo/shapes/transition-duct.json --out drawings", [file, folder, paper, json], parsed =>
            {
                var made = DevelopTransition.Run(DevelopTransition.Read(Desk.Read(parsed.GetRequiredValue(file))).Value).Value;
                if (parsed.GetValue(json)) desk.WriteJson(TransitionShape.Of(made));
                else Show(desk, made);
            });
    }

    static void Show(Desk desk, Made made)
    {
        var kit = made.Kit;
        desk.Out.WriteLine(kit.Title);
        foreach (var piece in kit.Pieces)
        {
            var points = piece.Outline.Flatten(0.01);
            desk.Out.WriteLine($"{piece.Name}: {points.Max(p => p.X) - points.Min(p => p.X):0.0} × {points.Max(p => p.Y) - points.Min(p => p.Y):0.0} mm, {piece.Thickness:0.##} mm thick{(piece.Count > 1 ? $", {piece.Count} of" : "")}{(piece.Creases.Length > 0 ? $", {piece.Creases.Length} bends" : "")}");
        }
        foreach (var list in kit.Listings)
        {
            desk.Out.WriteLine($"{list.Title}: {string.Join(" | ", list.Heads)}");
            foreach (var row in list.Rows) desk.Out.WriteLine($"  {string.Join(" | ", row)}");
        }
        foreach (var seam in kit.Seams) desk.Out.WriteLine($"seam {seam.Id}: {seam.Between}, {seam.Length:0} mm; {seam.Words}");
        foreach (var (step, i) in kit.Steps.Select((s, i) => (s, i))) desk.Out.WriteLine($"{i + 1}. {step}");
        foreach (var caution in kit.Cautions) desk.Out.WriteLine($"! {caution.Words}");
    }
}
