using System.CommandLine;
using WitnessMark.Cli.Drawing;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.FrontOffice.SetJoint;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.Trade;

namespace WitnessMark.Cli.Shapes;

/// <summary><c>wmark setting</c></summary>
static class SettingCommand
{
    public static Command Build(Desk desk)
    {
        var file = new Argument<string?>("FILE") { Description = "An angle tool, sine bar, jig or form tool in JSON; or none, with --angle.", Arity = ArgumentArity.ZeroOrOne };
        var (folder, json, paper, material, title) = (Common.Out("Folder for the files; without it only words are shown."), Common.Json(), DrawCommand.Paper(), Materialed.Option(), new TitleOptions());
        folder.HelpName = "FOLDER";
        var angle = new Option<string?>("--angle") { Description = "Angle of a sine bar: degrees, or as 37° 30'." };
        var bar = new Option<string>("--bar") { Description = "Distance of its rollers.", DefaultValueFactory = _ => "100 mm" };
        var set = new Option<string>("--set") { Description = $"Slip set: {string.Join(", ", SlipSets.All.Select(s => s.Name))}.", DefaultValueFactory = _ => "m88" };
        var grade = new Option<string>("--grade") { Description = $"Grade of the slips: {string.Join(", ", SlipSets.Grades)}.", DefaultValueFactory = _ => "1" };
        var wear = new Option<string>("--wear") { Description = "Thickness of the wear block at each end of the stack.", DefaultValueFactory = _ => "0 mm" };
        return Common.Command("setting", "Tools that hold an angle: angle blocks with a pin, slips under a sine bar, drill jigs, form tools.",
            "wmark setting --angle 37.5 --bar '100 mm' --set m88\n  wmark setting demo/shapes/setting-tool.json --out drawings", [file, folder, angle, bar, set, grade, wear, material, paper, .. title.All, json], parsed =>
            {
                var path = parsed.GetValue(file);
                if (path is null == parsed.GetValue(angle) is null) throw new RefusedException(Refusal.Of("setting", path, "name a file or give --angle, one of the two"));
                var wanted = path is not null ? SetJoint.Read(Desk.Read(path)).Value
                    : new SineWanted($"Sine bar at {parsed.GetValue(angle)}", Turn(parsed.GetValue(angle)!), Length(parsed.GetRequiredValue(bar), "--bar"), SlipSets.Of(parsed.GetRequiredValue(set)).Value,
                        parsed.GetRequiredValue(grade), Length(parsed.GetRequiredValue(wear), "--wear"));
                var made = SetJoint.Run(wanted).Value;
                var (metal, now) = (Materialed.Named(parsed.GetRequiredValue(material)), desk.Clock.GetUtcNow());
                var print = new KitRequest(made.Kit, path is null ? "sine-bar" : Path.GetFileNameWithoutExtension(path), title.Read(parsed, made.Kit.Title, metal.Name, "", now), metal)
                {
                    Paper = DrawCommand.PaperOf(parsed.GetRequiredValue(paper)),
                    Created = now,
                };
                var files = parsed.GetValue(folder) is { } to ? Common.WriteAll(to, KitFiles.Of(print)) : [];
                if (parsed.GetValue(json)) desk.WriteJson(FabricationShape.Of(made, files));
                else Show(desk, made, files);
            });
    }

    /// <summary>A plain number is degrees.</summary>
    static double Turn(string text) => Angles.Read(double.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out _) ? $"{text}°" : text, field: "--angle").Value.Radians;

    static double Length(string text, string option) => Lengths.Read(double.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out _) ? $"{text} mm" : text, TradeSpelling.Of(), option).Value.Mm;

    static void Show(Desk desk, SettingResult made, List<string> files)
    {
        desk.Out.WriteLine(made.Kit.Title);
        KitWords.Show(desk, made.Kit);
        foreach (var file in files) desk.Out.WriteLine(file);
    }
}
