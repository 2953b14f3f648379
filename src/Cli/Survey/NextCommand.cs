using System.CommandLine;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Survey;

/// <summary><c>wmark survey next</c></summary>
static class NextCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A reading sheet (CSV) or a survey in JSON.");
        var wanted = new Option<string>("--wanted") { Description = "± that every dimension is to keep in 19 of 20 cases.", DefaultValueFactory = _ => "0.1 mm" };
        var json = Common.Json();
        return Common.Command("next", "Says which reading to take next, or that it is enough.", "wmark survey next lamp-bracket.csv --wanted '0.05 mm'", [file, wanted, json], parsed =>
        {
            var half = Lengths.Read(parsed.GetRequiredValue(wanted), field: "--wanted").Value.Mm;
            if (!(half > 0)) throw new RefusedException(Refusal.Of("--wanted", parsed.GetRequiredValue(wanted), "give a ± of more than 0"));
            var sample = SampleFile.Read(Desk.Read(parsed.GetRequiredValue(file))).Value;
            var next = MeasureSample.Run(new MeasureRequest(sample) { WantedPlusMinus = half }).Next!;
            if (parsed.GetValue(json))
            {
                var readings = next.Readings.Select(n => new { Kind = KindRule.Of(n.Kind).Code, n.From, n.To, n.Expected, n.Instrument, Gain = Finite(n.Gain), n.Words });
                desk.WriteJson(new { next.Enough, LargestStdMm = Finite(next.LargestStd), next.Words, Readings = readings });
                return;
            }
            desk.Out.WriteLine(next.Words);
            foreach (var n in next.Readings)
            {
                var rule = KindRule.Of(n.Kind);
                var expected = rule.Measure switch { Measure.Length => $", about {LengthWriter.Write(n.Expected)}", Measure.Angle => $", about {AngleWriter.Write(n.Expected)}", _ => "" };
                desk.Out.WriteLine($"  {rule.Words} {n.From} {n.To}{(n.Instrument.Length > 0 ? $" by {n.Instrument}" : "")}{expected}: {n.Words}");
            }
        });
    }

    static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
