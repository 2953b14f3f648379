using System.CommandLine;
using System.Text;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;

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
        var solid = new Option<bool>("--solid") { Description = "For a bracket in space: faces, edges, holes and set-ups." };
        return Common.Command("sheet", "Writes an empty reading sheet to fill in.", "wmark survey sheet lamp-bracket --out lamp-bracket.csv --pdf lamp-bracket.pdf", [id, title, solid, file, pdf], parsed =>
        {
            if (parsed.GetValue(solid) && parsed.GetValue(pdf) is { } none) throw new RefusedException(Refusal.Of("--pdf", none, "only the flat sheet is printed to fill in by hand; leave out --solid or --pdf"));
            if (parsed.GetValue(pdf) is { } paper)
                desk.Out.WriteLine(Desk.Write(paper, PrintOut.Pdf("", BlankSheet.Print(parsed.GetRequiredValue(id), parsed.GetRequiredValue(title)), desk.Clock.GetUtcNow()).Bytes));
            if (parsed.GetValue(pdf) is not null && parsed.GetValue(file) is null) return;
            var (named, titled) = (parsed.GetRequiredValue(id), parsed.GetRequiredValue(title));
            var sheet = parsed.GetValue(solid) ? BlankSolid.Write(named, titled) : BlankSheet.Write(named, titled);
            if (parsed.GetValue(file) is { } path) desk.Out.WriteLine(Desk.Write(path, Encoding.UTF8.GetBytes(sheet)));
            else desk.Out.Write(sheet);
        });
    }
}
