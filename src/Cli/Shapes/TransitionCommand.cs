using System.CommandLine;
using WitnessMark.Cli.Drawing;
using WitnessMark.FrontOffice.DevelopTransition;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Shapes;

/// <summary><c>wmark transition</c></summary>
static class TransitionCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A cone, transition, elbow, saddle or mitre in JSON.");
        var (folder, json, paper, material, title) = (Common.Folder(), Common.Json(), DrawCommand.Paper(), Materialed.Option(), new TitleOptions());
        return Common.Command("transition", "Lays out cones, square-to-rounds and other transitions, segmented bends, saddles and mitres of tube.",
            "wmark transition demo/shapes/transition-duct.json --out drawings", [file, folder, material, paper, .. title.All, json], parsed =>
            {
                var path = parsed.GetRequiredValue(file);
                var made = DevelopTransition.Run(DevelopTransition.Read(Desk.Read(path)).Value).Value;
                var (metal, now) = (Materialed.Named(parsed.GetRequiredValue(material)), desk.Clock.GetUtcNow());
                var request = new KitRequest(made.Kit, Path.GetFileNameWithoutExtension(path), title.Read(parsed, made.Kit.Title, metal.Name, LengthWriter.Write(made.Asked.Thickness), now), metal)
                {
                    Paper = DrawCommand.PaperOf(parsed.GetRequiredValue(paper)),
                    Created = now,
                };
                var files = Common.WriteAll(parsed.GetRequiredValue(folder), KitFiles.Of(request));
                if (parsed.GetValue(json))
                {
                    desk.WriteJson(TransitionShape.Of(made, files));
                    return;
                }
                desk.Out.WriteLine(made.Kit.Title);
                KitWords.Show(desk, made.Kit);
                foreach (var written in files) desk.Out.WriteLine(written);
            });
    }
}
