using System.CommandLine;
using WitnessMark.Cli.Drawing;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Survey;

/// <summary><c>wmark survey solid</c></summary>
static class SolidCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A reading sheet of a bracket or weldment (CSV), or its survey in JSON.");
        var folder = Common.Out("Folder for the drawing and the pictures; without it only words are shown.");
        folder.HelpName = "FOLDER";
        var next = new Option<bool>("--next") { Description = "Only say which reading to take next, or that it is enough." };
        var wanted = new Option<string>("--wanted") { Description = "± that every dimension is to keep in 19 of 20 cases.", DefaultValueFactory = _ => "0.1 mm" };
        var (json, title) = (Common.Json(), new TitleOptions());
        return Common.Command("solid", "Adjusts the readings of a bracket in space: places, sizes, setting angles, drawing and pictures.",
            "wmark survey solid demo/samples/step-bracket.csv --out drawings", [file, folder, next, wanted, .. title.All, json], parsed =>
            {
                var half = Lengths.Read(parsed.GetRequiredValue(wanted), field: "--wanted").Value.Mm;
                if (!(half > 0)) throw new RefusedException(Refusal.Of("--wanted", parsed.GetRequiredValue(wanted), "give a ± of more than 0"));
                var path = parsed.GetRequiredValue(file);
                var beside = Path.GetDirectoryName(Path.GetFullPath(path))!;
                var sample = SolidFile.Read(Desk.Read(path), name => Desk.Read(Path.Combine(beside, name))).Value;
                var result = MeasureSolid.Run(new SolidRequest(sample) { WantedPlusMinus = half });
                void Words()
                {
                    if (parsed.GetValue(json)) desk.Out.WriteLine(result.ToJson());
                    else if (parsed.GetValue(next)) SolidPlanWords.WriteNext(desk.Out, result);
                    else SolidPlanWords.Write(desk.Out, result);
                }
                // What cannot be drawn is told before it is refused.
                if (result.Part is null) Words();
                var now = desk.Clock.GetUtcNow();
                var files = parsed.GetValue(folder) is { } to
                    ? Common.WriteAll(to, DrawSolid.Run(result, title.Read(parsed, sample.Title.Length > 0 ? sample.Title : sample.Id, "", "", now)).Files(now)) : [];
                if (result.Part is not null) Words();
                if (!parsed.GetValue(json)) files.ForEach(desk.Out.WriteLine);
            });
    }
}
