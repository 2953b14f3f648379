using System.CommandLine;
using System.Globalization;
using WitnessMark.FrontOffice.CutBlank;

namespace WitnessMark.Cli.Drawing;

/// <summary><c>wmark test-bend</c></summary>
static class TestBendCommand
{
    public static Command Build(Desk desk)
    {
        static Option<string> Asked(string name, string what) => new(name) { Description = what, Required = true };
        var strip = Asked("--strip", "Length of the strip before folding.");
        var legs = new Option<string[]>("--legs") { Description = "The two outside legs after folding.", Required = true, Arity = new ArgumentArity(2, 2), AllowMultipleArgumentsPerToken = true };
        var radius = Asked("--radius", "Inside radius.");
        var thickness = Asked("--thickness", "Thickness of the sheet.");
        var angle = new Option<string>("--angle") { Description = "Bend from flat.", DefaultValueFactory = _ => "90°" };
        var json = Common.Json();
        return Common.Command("test-bend", "Finds the bend allowance of your own folder and sheet from one folded strip.",
            "wmark test-bend --strip '100 mm' --legs '51.55 mm' '51.49 mm' --radius '2 mm' --thickness '16 SWG'",
            [strip, legs, angle, radius, thickness, json], parsed =>
            {
                var leg = parsed.GetRequiredValue(legs);
                var bend = new StripReading(parsed.GetRequiredValue(strip), leg[0], leg[1], parsed.GetRequiredValue(angle), parsed.GetRequiredValue(radius), parsed.GetRequiredValue(thickness)).Run();
                if (parsed.GetValue(json))
                {
                    desk.WriteJson(new { K = bend.K.Value, KStd = bend.K.Std });
                    return;
                }
                desk.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"neutral axis at {bend.K.Value:0.000} ± {bend.K.Expanded:0.000} of the thickness from the inside"));
                desk.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"use it as --allowance k={bend.K.Value:0.000}"));
            });
    }
}
