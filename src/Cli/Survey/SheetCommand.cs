using System.CommandLine;
using System.Text;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.Printing;

namespace WitnessMark.Cli.Survey;

/// <summary><c>wmark survey sheet</c></summary>
static class SheetCommand
{
    public static Command Build(Desk desk)
    {
        var id = new Argument<string>("ID") { Description = "Short name of the sample.", DefaultValueFactory = _ => "sample" };
        var title = new Option<string>("--title") { Description = "What it is.", DefaultValueFactory = _ => "" };
        var file = Common.Out("Write to this file instead of the screen.");
        var pdf = new Option<string?>("--pdf") { Description = "Also print it to this file, to fill in by hand.", HelpName = "FILE" };
        return Common.Command("sheet", "Writes an empty reading sheet to fill in.", "wmark survey sheet lamp-bracket --out lamp-bracket.csv --pdf lamp-bracket.pdf", [id, title, file, pdf], parsed =>
        {
            if (parsed.GetValue(pdf) is { } paper)
                desk.Out.WriteLine(Desk.Write(paper, PrintOut.Pdf("", BlankSheet.Print(parsed.GetRequiredValue(id), parsed.GetRequiredValue(title)), desk.Clock.GetUtcNow()).Bytes));
            if (parsed.GetValue(pdf) is not null && parsed.GetValue(file) is null) return;
            var sheet = BlankSheet.Write(parsed.GetRequiredValue(id), parsed.GetRequiredValue(title));
            if (parsed.GetValue(file) is { } path) desk.Out.WriteLine(Desk.Write(path, Encoding.UTF8.GetBytes(sheet)));
            else desk.Out.Write(sheet);
        });
    }
}
