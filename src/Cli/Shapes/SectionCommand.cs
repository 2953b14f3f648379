using System.CommandLine;
using System.Globalization;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Sections;
using WitnessMark.FrontOffice.CompareSections;

namespace WitnessMark.Cli.Shapes;

/// <summary><c>wmark section</c></summary>
static class SectionCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A cross-section in JSON: strips of sheet and their joins, or a solid outline.");
        var against = new Option<string?>("--against") { Description = "The copy, to be held against it.", HelpName = "FILE" };
        var json = Common.Json();
        return Common.Command("section", "Properties of a cross-section, and whether a copy is no weaker than the original.",
            "wmark section demo/shapes/section-rail-pressed.json --against demo/shapes/section-rail-two-piece.json", [file, against, json], parsed =>
            {
                TypedProfile Read(string path) => CompareSections.Read(Desk.Read(path)).Value;
                var result = CompareSections.Run(Read(parsed.GetRequiredValue(file)), parsed.GetValue(against) is { } copy ? Read(copy) : null).Value;
                if (parsed.GetValue(json)) desk.WriteJson(SectionShape.Of(result));
                else Show(desk.Out, result);
            });
    }

    static void Show(TextWriter to, SectionsResult result)
    {
        One(to, result.Section);
        if (result.Copy is { } copy)
        {
            One(to, copy);
            foreach (var r in result.Rows)
                to.WriteLine(Say($"{r.What}: {r.Original:0.###} {r.Unit}, copy {r.Copy:0.###}, {100 * r.Ratio:0} %{(r.MoreIsBetter ? r.NoWorse ? "" : " WEAKER" : "")}"));
            to.WriteLine(result.NoWeaker == true ? "The copy is no weaker in these figures." : "The copy is weaker than the original in what is marked, or its joins do not make it one piece.");
        }
        foreach (var caution in result.Cautions) to.WriteLine($"! {caution.Words}");
    }

    static void One(TextWriter to, ReckonedSection section)
    {
        var p = section.Made.Properties;
        to.WriteLine(Say($"{section.Made.Profile.Title}: {p.Area:0.0} mm², {p.MassPerMetre(section.Made.Material.Density):0.000} kg per metre of {section.Made.Material.Short()}"));
        to.WriteLine(Say($"  centroid at {p.Centroid.X:0.00}, {p.Centroid.Y:0.00} mm{(p.ShearCentre is { } s ? Say($"; bends without twisting when loaded through {s.X:0.00}, {s.Y:0.00} mm") : "")}"));
        to.WriteLine(Say($"  second moments: up and down {p.Ix:0} mm⁴, sideways {p.Iy:0} mm⁴, least any way {p.Principal.Least:0} mm⁴; twisting {p.Torsion:0} mm⁴ ({p.Cells switch { 0 => "open", 1 => "one closed cell", var n => Say($"{n} closed cells") }})"));
        to.WriteLine(Say($"  section moduli: up and down {p.Zx:0} mm³, sideways {p.Zy:0} mm³{(p.TorsionModulus is { } w ? Say($", twisting {w:0} mm³") : "")}"));
        foreach (var j in section.Joins)
            to.WriteLine(Say($"  join {j.Join.First} to {j.Join.Second} at {j.Join.At.X:0.#}, {j.Join.At.Y:0.#}: {j.Flow:0.0} N on each mm pass{(section.Loads is null ? " when the sheet yields" : "")}{(j.Pitch is { } pitch ? Say($"; plugs of {j.Join.Plug:0.#} mm bear {j.Plug / 1000:0.0} kN each, one every {pitch:0} mm or nearer") : "; weld it through")}"));
    }

    static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
