using System.Collections.Immutable;
using System.CommandLine;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.FrontOffice.TakeSample;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Survey;

/// <summary><c>wmark survey taking</c></summary>
static class TakingCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A reading sheet (CSV) or a survey in JSON, flat or in space, with a rough place for every feature; readings taken already count.");
        var tools = new Option<string>("--tools") { Description = "What is in the box; a number is how far it reaches in mm.", DefaultValueFactory = _ => "calliper 150, tape, height gauge, radius gauge, protractor" };
        var wanted = new Option<string?>("--wanted") { Description = "± that every distance and size is to keep in 19 of 20 cases.", HelpName = "LENGTH" };
        var paper = Common.Out("Print the sheet to this PDF, with a box to write each reading in.");
        var json = Common.Json();
        return Common.Command("taking", "Lists the fewest readings that hold and check everything on a sketched part.", "wmark survey taking demo/samples/rear-stay.csv --tools 'calliper 150, protractor'", [file, tools, wanted, paper, json], parsed =>
        {
            var (path, box, half) = (parsed.GetRequiredValue(file), TakeSample.ToolsOf(parsed.GetRequiredValue(tools)), Half(parsed.GetValue(wanted)));
            var bytes = Desk.Read(path);
            if (SolidFile.Is(bytes)) Solid(path, bytes, box, half);
            else Flat(bytes, box, half);

            void Flat(byte[] bytes, ImmutableArray<BenchTool> box, double? half)
            {
                var result = TakeSample.Run(new TakeRequest(SampleFile.Read(bytes).Value) { Tools = box, WantedPlusMinus = half });
                var (list, lines) = (result.List, result.Lines);
                if (!parsed.GetValue(json)) Write(desk.Out, result.Words, lines, result.Cautions);
                else desk.WriteJson(new { result.Words, list.Complete, list.Least, list.LargestStd, list.Undetermined, list.Unchecked, Readings = lines.Zip(list.Steps, (l, s) => new { l.Number, l.Group, KindRule.Of(s.Kind).Code, s.From, s.To, s.Expected, s.Instrument, s.Redundancy }), list.Cautions });
                Print(result.Print);
            }

            void Solid(string path, byte[] bytes, ImmutableArray<BenchTool> box, double? half)
            {
                var beside = Path.GetDirectoryName(Path.GetFullPath(path))!;
                var sample = SolidFile.Read(bytes, name => Desk.Read(Path.Combine(beside, name))).Value;
                var result = TakeSolid.Run(new SolidTakeRequest(sample) { Tools = box, WantedPlusMinus = half });
                var (list, lines) = (result.List, result.Lines);
                if (!parsed.GetValue(json)) Write(desk.Out, result.Words, lines, result.Cautions);
                else desk.WriteJson(new { result.Words, list.Complete, list.Least, list.LargestStd, list.Undetermined, list.Unchecked, Readings = lines.Zip(list.Steps, (l, s) => new { l.Number, l.Group, SolidRule.Of(s.Kind).Code, s.From, s.To, s.Expected, s.Instrument, s.Redundancy }), list.Cautions });
                Print(result.Print);
            }

            void Print(Func<DateTimeOffset?, PrintOut> print)
            {
                if (parsed.GetValue(paper) is { } to) desk.Out.WriteLine(Desk.Write(to, print(desk.Clock.GetUtcNow()).Bytes));
            }
        });
    }

    static double? Half(string? wanted)
    {
        if (wanted is null) return null;
        var half = Lengths.Read(wanted, field: "--wanted").Value.Mm;
        return half > 0 ? half : throw new RefusedException(Refusal.Of("--wanted", wanted, "give a ± of more than 0"));
    }

    static void Write(TextWriter to, string words, ImmutableArray<TakeLine> lines, ImmutableArray<string> cautions)
    {
        to.WriteLine(words);
        foreach (var group in lines.GroupBy(l => l.Group))
        {
            to.WriteLine();
            to.WriteLine(group.Key);
            foreach (var l in group) to.WriteLine($"{l.Number,4}  {$"{l.Kind} {l.From} {l.To}".TrimEnd(),-40}{$"about {l.About}"}");
        }
        to.WriteLine();
        foreach (var caution in cautions) to.WriteLine($"! {caution}");
    }
}
