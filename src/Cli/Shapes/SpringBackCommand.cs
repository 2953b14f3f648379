using System.CommandLine;
using System.Globalization;
using WitnessMark.Cli.Drawing;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.FrontOffice.SetBend;
using WitnessMark.Maths.Units;
using WitnessMark.Trade;

namespace WitnessMark.Cli.Shapes;

/// <summary><c>wmark spring-back</c></summary>
static class SpringBackCommand
{
    public static Command Build(Desk desk)
    {
        static Option<string?> Asked(string name, string what, bool required = false) => new(name) { Description = what, Required = required };
        var radius = Asked("--radius", "Inside radius wanted in the finished part.", required: true);
        var thickness = Asked("--thickness", "Thickness of the sheet.", required: true);
        var angle = new Option<string>("--angle") { Description = "Bend wanted, from flat.", DefaultValueFactory = _ => "90°" };
        var length = new Option<string>("--length") { Description = "Length of the bend.", DefaultValueFactory = _ => "100 mm" };
        var (material, json) = (Materialed.Option(), Common.Json());
        var grain = new Option<string>("--grain") { Description = "How the bend lies to the grain: across, slanting or along.", DefaultValueFactory = _ => "across" };
        grain.AcceptOnlyFromAmong("across", "slanting", "along");
        var opening = Asked("--die", "Opening of the V; 8 thicknesses unless given.");
        var trial = new Option<string[]>("--trial") { Description = "Your own trial bend of the same sheet: inside radius of the tool, angle set, angle found.", Arity = new ArgumentArity(3, 3), AllowMultipleArgumentsPerToken = true };
        var hot = new Option<bool>("--hot") { Description = "Formed by heat: says what to beware of." };
        return Common.Command("spring-back", "Former radius and over-bend of one bend, its force, least radius, and whether the shop's folder does it.",
            "wmark spring-back --radius '20 mm' --angle 90 --thickness '1.2 mm' --length '300 mm' --material DC01",
            [radius, angle, thickness, length, material, grain, opening, trial, hot, json], parsed =>
            {
                var wanted = new WantedBend(Length(parsed.GetValue(radius)!, "radius"), Turn(parsed.GetRequiredValue(angle), "angle"),
                    Length(parsed.GetValue(thickness)!, "thickness"), Length(parsed.GetRequiredValue(length), "length"));
                var result = SetBend.Run(new(wanted, Materialed.Named(parsed.GetRequiredValue(material)))
                {
                    Grain = Enum.Parse<Grain>(parsed.GetRequiredValue(grain), ignoreCase: true),
                    Opening = parsed.GetValue(opening) is { } v ? Length(v, "die") : null,
                    Trial = parsed.GetValue(trial) is [var r, var set, var found] ? new(Length(r, "trial, radius"), Turn(set, "trial, angle set"), Turn(found, "trial, angle found")) : null,
                    Hot = parsed.GetValue(hot),
                }).Value;
                if (parsed.GetValue(json)) desk.WriteJson(Shape(result));
                else Show(desk.Out, result);
            });
    }

    static object Shape(SetBendResult r) => new
    {
        FormerRadiusMm = r.Radius,
        SetAngleRad = r.Angle,
        ByTrial = r.ByTrial is not null,
        TableRadiusMm = r.Overbend.Radius,
        TableAngleRad = r.Overbend.Angle,
        r.Overbend.Kept,
        r.Overbend.PlaneStrain,
        DieOpeningMm = r.Opening,
        ForceN = r.Force,
        FoldingMomentNmm = r.Moment,
        LeastRadiusMm = r.LeastRadius,
        AsMildSteelMm = r.AsMildSteel,
        Cautions = r.Cautions.Select(c => c.Words),
    };

    static void Show(TextWriter to, SetBendResult r)
    {
        var (over, wanted) = (r.Overbend, r.Request.Wanted);
        to.WriteLine(Say($"wanted: {Degrees(wanted.Angle)} round {wanted.Radius:0.##} mm inside, {wanted.Thickness:0.##} mm {r.Request.Material.Short()}"));
        to.WriteLine(Say($"make the former {r.Radius:0.00} mm and bend to {Degrees(r.Angle)}, {Degrees(r.Angle - wanted.Angle)} over{(r.ByTrial is null ? "" : ", by your own trial bend")}"));
        to.WriteLine(Say($"by the yield this grade may have: radius {over.Radius.Low:0.00} to {over.Radius.High:0.00} mm, angle {Degrees(over.Angle.Low)} to {Degrees(over.Angle.High)}{(over.PlaneStrain ? "; a wide bend, held along its length" : "; a narrow bend, free along its length")}"));
        to.WriteLine(Say($"force over a V of {r.Opening:0.#} mm: {r.Force / 1000:0.0} kN; to fold it: {r.Moment / 1000:0.0} N m; as {r.AsMildSteel:0.0#} mm of mild steel"));
        if (r.LeastRadius is { } least) to.WriteLine(Say($"least inside radius this metal is sure of: {least:0.0} mm"));
        foreach (var caution in r.Cautions) to.WriteLine($"! {caution.Words}");
    }

    static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);

    static string Degrees(double radians) => Say($"{radians * 180 / Math.PI:0.0}°");

    /// <summary>A plain number is degrees.</summary>
    static double Turn(string text, string field) => Angles.Read(Plain(text) ? $"{text}°" : text, TradeSpelling.Of(), field).Value.Radians;

    /// <summary>A plain number is mm.</summary>
    static double Length(string text, string field) => Lengths.Read(Plain(text) ? $"{text} mm" : text, TradeSpelling.Of(), field).Value.Mm;

    static bool Plain(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
}
