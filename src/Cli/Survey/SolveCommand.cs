using System.CommandLine;
using WitnessMark.FrontOffice.MeasureSample;

namespace WitnessMark.Cli.Survey;

/// <summary><c>wmark survey solve</c></summary>
static class SolveCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A reading sheet (CSV) or a survey in JSON.");
        var json = Common.Json();
        return Common.Command("solve", "Adjusts the readings of a sample and prints its true plan.", "wmark survey solve lamp-bracket.csv --json", [file, json], parsed =>
        {
            var sample = SampleFile.Read(Desk.Read(parsed.GetRequiredValue(file))).Value;
            var result = MeasureSample.Run(new MeasureRequest(sample));
            if (parsed.GetValue(json)) desk.Out.WriteLine(result.ToJson());
            else PlanWords.Write(desk.Out, result);
        });
    }
}
