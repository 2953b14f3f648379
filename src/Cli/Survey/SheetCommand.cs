using System.CommandLine;
using System.Text;
using WitnessMark.FrontOffice.MeasureSample;

namespace WitnessMark.Cli.Survey;

/// <summary><c>wmark survey sheet</c></summary>
static class SheetCommand
{
    public static Command Build(Desk desk)
    {
        var id = new Argument<string>("ID") { Description = "Short name of the sample.", DefaultValueFactory = _ => "sample" };
        var title = new Option<string>("--title") { Description = "What it is.", DefaultValueFactory = _ => "" };
        var file = Common.Out("Write to this file instead of the screen.");
        return Common.Command("sheet", "Writes an empty reading sheet to fill in.", "wmark survey sheet lamp-bracket --out lamp-bracket.csv", [id, title, file], parsed =>
        {
            var sheet = BlankSheet.Write(parsed.GetRequiredValue(id), parsed.GetRequiredValue(title));
            if (parsed.GetValue(file) is { } path) desk.Out.WriteLine(Desk.Write(path, Encoding.UTF8.GetBytes(sheet)));
            else desk.Out.Write(sheet);
        });
    }
}
