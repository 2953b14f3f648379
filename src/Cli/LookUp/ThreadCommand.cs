using System.CommandLine;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.Cli.LookUp;

/// <summary><c>wmark thread</c></summary>
static class ThreadCommand
{
    public static Command Build(Desk desk)
    {
        var name = new Argument<string>("NAME") { Description = "As ordered: 1/4 BSF, 2 BA, M8×1, 1/4-20 UNC." };
        var json = Common.Json();
        return Common.Command("thread", "Looks a screw thread up in the tables.", "wmark thread '5/16 BSF'", [name, json], parsed =>
        {
            var asked = parsed.GetRequiredValue(name);
            var thread = Threads.Find(asked) ?? throw new RefusedException(Refusal.Of("thread", asked, "write it as ordered, such as 1/4 BSF, 2 BA, M8×1 or 1/4-20 UNC"));
            var alike = LookAlikes.Of(thread);
            if (parsed.GetValue(json))
            {
                desk.WriteJson(new
                {
                    thread.Name,
                    Series = thread.Series.ToString(),
                    DiameterMm = thread.Diameter,
                    PitchMm = thread.Pitch,
                    thread.ThreadsPerInch,
                    CoreMm = thread.Core,
                    EffectiveMm = thread.Effective,
                    NutMinorMm = thread.NutMinor,
                    thread.Form.FlankDegrees,
                    TapDrillMm = thread.TapDrill,
                    Source = thread.Source.Title,
                    Grade = thread.Grade.ToString(),
                    LookAlikes = alike.Select(a => new { a.Other.Name, a.Why }),
                });
                return;
            }
            desk.Out.WriteLine($"{thread.Name}: ⌀{thread.Diameter:0.000} mm, pitch {thread.Pitch:0.0000} mm ({thread.ThreadsPerInch:0.##} TPI), {thread.Form.FlankDegrees:0.#}° flanks");
            desk.Out.WriteLine($"core {thread.Core:0.000} mm, effective {thread.Effective:0.000} mm, nut {thread.NutMinor:0.000} mm, tapping drill {(thread.TapDrill is { } drill ? $"{drill:0.00} mm" : "not in the table")}");
            foreach (var a in alike) desk.Out.WriteLine($"! {a.Why}");
            desk.Out.WriteLine($"source: {thread.Source.Title} ({thread.Grade})");
        });
    }
}
