using System.CommandLine;
using WitnessMark.Cli.Drawing;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.FrontOffice.RaiseBead;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Shapes;

/// <summary><c>wmark bead</c></summary>
static class BeadCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A panel in JSON: beads, flanged holes, wired and hemmed edges.");
        var (folder, json, paper, title) = (Common.Out("Folder for the files; without it only words are shown."), Common.Json(), DrawCommand.Paper(), new TitleOptions());
        folder.HelpName = "FOLDER";
        return Common.Command("bead", "Beads, swages, flanged holes and stiffened edges of a panel: blank, formers and dies, order of work, what the metal bears.",
            "wmark bead demo/shapes/bead-floor.json --out drawings", [file, folder, paper, .. title.All, json], parsed =>
            {
                var path = parsed.GetRequiredValue(file);
                var result = RaiseBead.Run(RaiseBead.Read(Desk.Read(path)).Value).Value;
                var (kit, now) = (result.Made.Kit, desk.Clock.GetUtcNow());
                var print = new KitRequest(kit, Path.GetFileNameWithoutExtension(path),
                    title.Read(parsed, kit.Title, result.Material.Name, LengthWriter.Write(result.Made.Plan.Panel.Thickness), now), result.Material)
                {
                    Paper = DrawCommand.PaperOf(parsed.GetRequiredValue(paper)),
                    Created = now,
                };
                var files = parsed.GetValue(folder) is { } to ? Common.WriteAll(to, KitFiles.Of(print)) : [];
                if (parsed.GetValue(json)) desk.WriteJson(BeadShape.Of(result.Made, files));
                else
                {
                    desk.Out.WriteLine(kit.Title);
                    KitWords.Show(desk, kit);
                    foreach (var written in files) desk.Out.WriteLine(written);
                }
            });
    }
}
