using System.CommandLine;
using System.Text;
using WitnessMark.FrontOffice.PractiseMeasuring;
using WitnessMark.FrontOffice.Printing;

namespace WitnessMark.Cli.Practice;

/// <summary><c>wmark practice sheet</c></summary>
static class SheetCommand
{
    public static Command Build(Desk desk)
    {
        var number = new Option<int>("--number") { Description = $"Number of the sheet, 1 to {PracticeSheet.LastNumber}: every sheet has sizes of its own.", Required = true };
        var paper = new Option<string>("--paper") { Description = "A4 or Letter.", DefaultValueFactory = _ => "A4" };
        var file = Common.Out("The file to write, by its ending a PDF or an SVG.");
        var list = new Option<string?>("--list") { Description = "Also write the readings to take, to be filled in, to this CSV.", HelpName = "FILE" };
        return Common.Command("sheet", "Prints a plate without figures to be measured for practice. Print it at 100 %, never fitted to the page.",
            "wmark practice sheet --number 17 --paper A4 --out practice-17.pdf --list practice-17.csv", [number, paper, file, list], parsed =>
            {
                var (n, on) = (parsed.GetRequiredValue(number), PracticeSheet.Paper(parsed.GetRequiredValue(paper)));
                var to = parsed.GetValue(file);
                PrintOut sheet = to?.EndsWith(".svg", StringComparison.OrdinalIgnoreCase) == true ? PracticeSheet.Svg(n, on) : PracticeSheet.Pdf(n, on, desk.Clock.GetUtcNow());
                desk.Out.WriteLine(Desk.Write(to ?? sheet.FileName, sheet.Bytes));
                if (parsed.GetValue(list) is { } csv) desk.Out.WriteLine(Desk.Write(csv, Encoding.UTF8.GetBytes(PracticeFile.Write(new(n, [])))));
            });
    }
}
