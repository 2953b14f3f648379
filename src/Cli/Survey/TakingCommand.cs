using System.CommandLine;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.TakeSample;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Survey;

/// <summary><c>wmark survey taking</c></summary>
static class TakingCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A reading sheet (CSV) or a survey in JSON with a rough place for every feature; readings taken already count.");
        var tools = new Option<string>("--tools") { Description = "What is in the box; a number is how far it reaches in mm.", DefaultValueFactory = _ => "calliper 150, tape, radius gauge, protractor" };
        var wanted = new Option<string?>("--wanted") { Description = "± that every distance and size is to keep in 19 of 20 cases.", HelpName = "LENGTH" };
        var paper = Common.Out("Print the sheet to this PDF, with a box to write each reading in.");
        var json = Common.Json();
        return Common.Command("taking", "Lists the fewest readings that hold and check everything on a sketched part.", "wmark survey taking demo/samples/rear-stay.csv --tools 'calliper 150, protractor'", [file, tools, wanted, paper, json], parsed =>
        {
            var sample = SampleFile.Read(Desk.Read(parsed.GetRequiredValue(file))).Value;
            var result = TakeSample.Run(new TakeRequest(sample) { Tools = TakeSample.ToolsOf(parsed.GetRequiredValue(tools)), WantedPlusMinus = Half(parsed.GetValue(wanted)) });
            if (parsed.GetValue(json))
            {
                var (list, lines) = (result.List, result.Lines);
                desk.WriteJson(new { result.Words, list.Complete, list.Least, list.LargestStd, list.Undetermined, list.Unchecked, Readings = lines.Zip(list.Steps, (l, s) => new { l.Number, l.Group, KindRule.Of(s.Kind).Code, s.From, s.To, s.Expected, s.Instrument, s.Redundancy }), list.Cautions });
            }
            else
            {
                Write(desk.Out, result);
            }
            if (parsed.GetValue(paper) is { } path) desk.Out.WriteLine(Desk.Write(path, result.Print(desk.Clock.GetUtcNow()).Bytes));
        });
    }

    static double? Half(string? wanted)
    {
        if (wanted is null) return null;
        var half = Lengths.Read(wanted, field: "--wanted").Value.Mm;
        return half > 0 ? half : throw new RefusedException(Refusal.Of("--wanted", wanted, "give a ± of more than 0"));
    }

    static void Write(TextWriter to, TakeResult result)
    {
        to.WriteLine(result.Words);
        foreach (var group in result.Lines.GroupBy(l => l.Group))
        {
            to.WriteLine();
            to.WriteLine(group.Key);
            foreach (var l in group) to.WriteLine($"{l.Number,4}  {$"{l.Kind} {l.From} {l.To}".TrimEnd(),-40}{$"about {l.About}"}");
        }
        to.WriteLine();
        foreach (var caution in result.Cautions) to.WriteLine($"! {caution}");
    }
}
