using System.CommandLine;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.Trade;

namespace WitnessMark.Cli.LookUp;

/// <summary><c>wmark gauge</c> and <c>wmark drill</c>: the listed sizes nearest to one that is written.</summary>
static class SizeCommands
{
    const int Shown = 5;

    public static Command Gauge(Desk desk) => Nearest(desk, "gauge", "Sheet and wire gauges nearest to a thickness, or a gauge by its name.", "wmark gauge '16 SWG'", () => Gauges.All);

    public static Command Drill(Desk desk) => Nearest(desk, "drill", "Drills nearest to a diameter, or a drill by its name.", "wmark drill 'No. 43 drill'", () => Drills.All);

    static Command Nearest(Desk desk, string name, string does, string example, Func<IEnumerable<NominalSize>> all)
    {
        var size = new Argument<string>("SIZE") { Description = "A size as written, or a name." };
        var json = Common.Json();
        return Common.Command(name, does, example, [size, json], parsed =>
        {
            var mm = Lengths.Read(parsed.GetRequiredValue(size), TradeSpelling.Of(), "size").Value.Mm;
            if (!(mm > 0)) throw new RefusedException(Refusal.Of("size", parsed.GetRequiredValue(size), "give a size of more than 0"));
            var near = all().OrderBy(s => Math.Abs(s.Mm - mm)).Take(Shown).ToList();
            if (parsed.GetValue(json))
            {
                desk.WriteJson(new { Mm = mm, Nearest = near.Select(s => new { s.Name, s.Series, s.Mm, OffMm = s.Mm - mm, Source = s.Source.Title, Grade = s.Grade.ToString() }) });
                return;
            }
            desk.Out.WriteLine(LengthWriter.Write(mm, LengthStyle.Millimetres(4)));
            foreach (var s in near) desk.Out.WriteLine($"{s.Name,-20} {s.Mm,9:0.0000} mm  {s.Mm - mm,9:+0.0000;-0.0000;0.0000}  {s.Source.Title} ({s.Grade})");
        });
    }
}
