using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.SetJoint;

/// <summary>What was made of a request.</summary>
/// <param name="Sine">Null for all but a sine bar.</param>
public sealed record SettingResult(Kit Kit, SineSetting? Sine);

/// <summary>Setting tools, slips under a sine bar, drill jigs and form tools.</summary>
public static class SetJoint
{
    /// <param name="bytes">UTF-8, at most 16 MB.</param>
    public static Parsed<SettingRequest> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return SettingJson.Read(TextFile.Decode(bytes));
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    public static Parsed<SettingResult> Run(SettingRequest request) => request switch
    {
        AngleToolWanted w => Made(AngleBlock.Of(w.Tool, w.Fit)),
        JigWanted w => Made(DrillJig.Of(w.Title, w.Holes, w.BothHands, w.Fit)),
        FormToolWanted w => Made(w.Tool.ToKit(w.Fit) is { Ok: true } kit ? Sprung(kit.Value, w.Overbend) : w.Tool.ToKit(w.Fit)),
        SineWanted w => Stacked(w),
        _ => Refusal.Of("kind", request.Title, "no such setting"),
    };

    static Parsed<SettingResult> Made(Parsed<Kit> kit) => kit.Ok ? new SettingResult(kit.Value, null) : kit.Refusal!;

    static Kit Sprung(Kit kit, Overbend? overbend) => overbend is null ? kit : kit with
    {
        Listings = [.. kit.Listings, new("Spring-back", ["what", "wanted", "on the tool", "range over the metal's yield"],
        [
            ["inside radius", $"{N(overbend.Wanted.Radius)} mm", $"{N(overbend.Radius.Value)} mm", $"{N(overbend.Radius.Low)} to {N(overbend.Radius.High)} mm"],
            ["angle from flat", $"{Deg(overbend.Wanted.Angle)}°", $"{Deg(overbend.Angle.Value)}°", $"{Deg(overbend.Angle.Low)} to {Deg(overbend.Angle.High)}°"],
        ])],
        Cautions = [.. kit.Cautions, .. overbend.Cautions],
    };

    static Parsed<SettingResult> Stacked(SineWanted w)
    {
        var set = SineBar.Set(w.Angle, w.Bar, w.Set, w.Grade, w.Wear);
        if (!set.Ok) return set.Refusal!;
        var s = set.Value;
        var blocks = s.Stack.Blocks.Select((b, i) => ImmutableArray.Create($"{i + 1}", Block(b, w.Set.Inch), w.Wear > 0 && (i == 0 || i == s.Stack.Blocks.Length - 1) ? "wear block" : ""));
        return new SettingResult(new Kit(w.Title, [])
        {
            Listings =
            [
                new($"Slips from {w.Set.Name}", ["no.", "block", "note"], [.. blocks]),
                new("Sine bar", ["what", "figure"],
                [
                    ["angle wanted", $"{Fine(w.Angle)}°"],
                    ["height, bar × sin(angle)", Block(s.Exact, w.Set.Inch)],
                    ["height of the stack", $"{Block(s.Stack.Height.Value, w.Set.Inch)} ± {(2000 * s.Stack.Height.Std).ToString("0.0", CultureInfo.InvariantCulture)} µm (grade {w.Grade}, 19 in 20)"],
                    ["angle it gives", $"{Fine(s.Angle.Value)}° ± {(s.Angle.Expanded * 180 / Math.PI * 3600).ToString("0", CultureInfo.InvariantCulture)} seconds of arc (19 in 20)"],
                    ["source of the set", w.Set.Source.Title],
                ]),
            ],
            Steps = ["Clean the blocks and wring them, thickest first, wear blocks outside; leave them an hour at one temperature with the bar.", "Set one roller on the plate, the other on the stack; clamp lightly to an angle plate.", "Check with a clock: the work's face runs true along the bar."],
            Cautions = s.Cautions,
        }, s);
    }

    static string Block(double mm, bool inch) => inch ? $"{(mm / Maths.Units.Inch.Mm).ToString("0.0000", CultureInfo.InvariantCulture)} in" : $"{mm.ToString("0.000#", CultureInfo.InvariantCulture)} mm";

    static string Fine(double angle) => (angle * 180 / Math.PI).ToString("0.0000", CultureInfo.InvariantCulture);

    static string Deg(double angle) => (angle * 180 / Math.PI).ToString("0.##", CultureInfo.InvariantCulture);

    static string N(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture);
}
