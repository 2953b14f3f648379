using System.CommandLine;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.FrontOffice.MeasurePhoto;

namespace WitnessMark.Cli.Photo;

/// <summary><c>wmark photo target</c></summary>
static class TargetCommand
{
    public static Command Build(Desk desk)
    {
        var paper = new Option<string>("--paper") { Description = "a4, a3 or letter.", DefaultValueFactory = _ => "a4" };
        var file = Common.Out("The PDF to write.");
        var json = Common.Json();
        return Common.Command("target", "Prints the target sheet that a part is photographed on. Print it at 100 % and measure its check lines.",
            "wmark photo target --paper a4 --out target-a4.pdf", [paper, file, json], parsed =>
            {
                var target = Target.Of(parsed.GetRequiredValue(paper)).Value;
                var sheet = TargetPrint.Of(target, desk.Clock.GetUtcNow());
                var path = Desk.Write(parsed.GetValue(file) ?? sheet.FileName, sheet.Bytes);
                if (parsed.GetValue(json)) desk.WriteJson(new { Paper = target.Name, Squares = target.Count, PitchMm = Target.Pitch, SideMm = Target.Side, CheckLineMm = Target.CheckLength, ClearWidthMm = 2 * target.Clear.X, ClearHeightMm = 2 * target.Clear.Y, File = path });
                else
                {
                    desk.Out.WriteLine($"Target sheet {target.Name}: {target.Count} squares; a part of up to {2 * target.Clear.X:0} by {2 * target.Clear.Y:0} mm lies inside them.");
                    desk.Out.WriteLine($"Print at 100 %. Measure both check lines: each should be {Target.CheckLength:0} mm, and what you read says how true the print is.");
                    desk.Out.WriteLine(path);
                }
            });
    }
}
