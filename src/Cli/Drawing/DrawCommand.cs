using System.CommandLine;
using WitnessMark.FrontOffice.DrawPart;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths.Units;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.Cli.Drawing;

/// <summary><c>wmark draw</c></summary>
static class DrawCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A reading sheet (CSV) or a survey in JSON.");
        var (folder, json, title) = (Common.Folder(), Common.Json(), new TitleOptions());
        var units = Units();
        var origin = new Option<string>("--origin") { Description = "Where the vehicle comes from, for the made-to sizes.", DefaultValueFactory = _ => "unknown" };
        origin.AcceptOnlyFromAmong([.. Origins.All.Select(o => o.Name)]);
        var paper = Paper();
        return Common.Command("draw", "Draws a measured flat part: PDF, SVG, DXF and a 1:1 template.", "wmark draw demo/samples/dynamo-plate.csv --origin british --out drawings",
            [file, folder, units, origin, paper, .. title.All, json], parsed =>
            {
                var sample = SampleFile.Read(Desk.Read(parsed.GetRequiredValue(file))).Value;
                var measured = MeasureSample.Run(new MeasureRequest(sample) { Advise = false });
                var now = desk.Clock.GetUtcNow();
                var drawn = DrawPart.Run(new(sample, measured.Plan, title.Read(parsed, sample.Title.Length > 0 ? sample.Title : sample.Id, "", "", now))
                {
                    Prior = Origins.Named(parsed.GetRequiredValue(origin))!,
                    Style = StyleOf(parsed.GetRequiredValue(units)),
                });
                var files = Common.WriteAll(parsed.GetRequiredValue(folder), drawn.Files(PaperOf(parsed.GetRequiredValue(paper)), now));
                Show(desk, drawn, files, parsed.GetValue(json));
            });
    }

    public static Option<string> Units()
    {
        var units = new Option<string>("--units") { Description = "mm, inch or fraction.", DefaultValueFactory = _ => "mm" };
        units.AcceptOnlyFromAmong("mm", "inch", "fraction");
        return units;
    }

    public static Option<string> Paper()
    {
        var paper = new Option<string>("--paper") { Description = "Paper of the template: A4 or A3.", DefaultValueFactory = _ => "A4" };
        paper.AcceptOnlyFromAmong("A4", "A3");
        return paper;
    }

    public static PaperSize PaperOf(string name) => name == "A3" ? PaperSize.A3 : PaperSize.A4;

    public static LengthStyle StyleOf(string units) => units switch
    {
        "inch" => LengthStyle.DecimalInches(),
        "fraction" => LengthStyle.FractionInches(),
        _ => LengthStyle.Millimetres(),
    };

    static void Show(Desk desk, DrawResult drawn, List<string> files, bool json)
    {
        if (json)
        {
            desk.WriteJson(new
            {
                Files = files,
                Scale = drawn.Drawing.Scale.ToString(),
                Paper = drawn.Drawing.Paper.Name,
                Dimensions = drawn.Drawing.Dimensions.Length,
                MadeTo = drawn.MadeTo.Features.Select(f => new { f.Id, MadeTo = drawn.MadeTo.OfFeature(f.Id), f.MadeTo.Words }),
                drawn.Cautions,
            });
            return;
        }
        foreach (var (id, made) in drawn.MadeTo.Features) desk.Out.WriteLine($"{id}: {made.Words}");
        foreach (var caution in drawn.Cautions) desk.Out.WriteLine($"! {caution}");
        foreach (var file in files) desk.Out.WriteLine(file);
    }
}
