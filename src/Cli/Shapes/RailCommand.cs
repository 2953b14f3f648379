using System.CommandLine;
using WitnessMark.Cli.Drawing;
using WitnessMark.DrawingOffice.Rails;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.FrontOffice.FoldRail;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Shapes;

/// <summary><c>wmark rail</c></summary>
static class RailCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A rail in JSON: a section given at stations.");
        var (folder, json, title, paper) = (Common.Folder(), Common.Json(), new TitleOptions(), DrawCommand.Paper());
        var (method, material) = (BlankCommand.Method(), Materialed.Option());
        Option<int> proposal = new("--proposal") { Description = "Which of the ways to make each flange: 1 the best, 2 the next.", DefaultValueFactory = _ => 1 };
        Option<bool> mesh = new("--check-mesh") { Description = "Hold the blanks against a fine mesh laid flat; takes seconds." };
        return Common.Command("rail", "Lays out a folded rail from its stations: blanks with true holes, strain along its flanges, ways to make it, former and drawings.",
            "wmark rail demo/shapes/rail-chassis.json --out drawings", [file, folder, proposal, mesh, method, material, paper, .. title.All, json], parsed =>
            {
                var path = parsed.GetRequiredValue(file);
                var rail = FoldRail.Read(Desk.Read(path)).Value;
                var metal = Materialed.Named(parsed.GetRequiredValue(material));
                var made = FoldRail.Run(new(rail, metal) { Method = BendMethods.Read(parsed.GetRequiredValue(method)).Value, Proposal = parsed.GetRequiredValue(proposal) });
                var now = desk.Clock.GetUtcNow();
                var request = new KitRequest(made.Kit, Path.GetFileNameWithoutExtension(path), title.Read(parsed, rail.Title, metal.Name, LengthWriter.Write(rail.Thickness), now), metal)
                {
                    Paper = DrawCommand.PaperOf(parsed.GetRequiredValue(paper)),
                    Created = now,
                };
                var files = Common.WriteAll(parsed.GetRequiredValue(folder), KitFiles.Of(request));
                var bounds = parsed.GetValue(mesh) ? MeshCheck.Of(made.Made.Form) : [];
                if (parsed.GetValue(json)) desk.WriteJson(RailShape.Of(made, bounds, files));
                else Show(desk, made, bounds, files);
            });
    }

    static void Show(Desk desk, RailResult made, IReadOnlyList<MeshBound> bounds, List<string> files)
    {
        desk.Out.WriteLine($"{made.Kit.Title}: {LengthWriter.Write(made.Made.Form.Rail.Thickness)} thick, {(made.Kit.Pieces.Sum(p => p.Count) is 1 ? "1 piece" : $"{made.Kit.Pieces.Sum(p => p.Count)} pieces")}");
        foreach (var piece in made.Kit.Pieces)
        {
            var (x, y) = (piece.Outline.Flatten(0.05).Select(p => p.X).ToList(), piece.Outline.Flatten(0.05).Select(p => p.Y).ToList());
            desk.Out.WriteLine($"{piece.Name}: {LengthWriter.Write(x.Max() - x.Min())} × {LengthWriter.Write(y.Max() - y.Min())}, {piece.Openings.Length} holes");
        }
        foreach (var edge in made.Made.Ways)
            foreach (var (way, i) in edge.Ways.Select((w, i) => (w, i)))
                desk.Out.WriteLine($"{edge.Strain.Edge} flange, way {i + 1}{(made.Made.Chosen.Contains(way) ? " (taken)" : "")}: {way.Words} About {way.Hours:0.0} h.");
        foreach (var (step, i) in made.Kit.Steps.Select((s, i) => (s, i))) desk.Out.WriteLine($"step {i + 1}: {step}");
        foreach (var b in bounds) desk.Out.WriteLine($"mesh, {b.Face}: the blank's edge is within {b.Outline:0.000} mm; the best flat piece keeps {100 * Math.Max(b.Flat.Stretch, -b.Flat.Shrink):0.000} % of strain and {100 * b.Flat.AreaChange:0.000} % of area{(b.Flat.Settled ? "" : " (not settled)")}");
        foreach (var caution in made.Cautions) desk.Out.WriteLine($"! {caution.Words}");
        foreach (var file in files) desk.Out.WriteLine(file);
    }
}
