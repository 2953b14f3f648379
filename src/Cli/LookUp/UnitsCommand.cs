using System.CommandLine;
using WitnessMark.Maths.Units;
using WitnessMark.Trade;

namespace WitnessMark.Cli.LookUp;

/// <summary><c>wmark units</c></summary>
static class UnitsCommand
{
    public static Command Build(Desk desk)
    {
        var value = new Argument<string>("VALUE") { Description = "As written: 3 5/16\", 64 thou, 14 SWG, 31,5 mm, 5° 30'." };
        var bare = new Option<string>("--bare") { Description = "What a bare number means: mm or inch.", DefaultValueFactory = _ => "mm" };
        bare.AcceptOnlyFromAmong("mm", "inch");
        var json = Common.Json();
        return Common.Command("units", "Reads a length or an angle as people write it and says it in all units.", "wmark units '3 5/16\"'", [value, bare, json], parsed =>
        {
            var text = parsed.GetRequiredValue(value);
            var spelling = TradeSpelling.Of(parsed.GetValue(bare) == "inch" ? LengthUnit.Inch : LengthUnit.Millimetre);
            if (LooksLikeAngle(text)) Show(desk, Angles.Read(text, spelling, "value").Value, parsed.GetValue(json));
            else Show(desk, Lengths.Read(text, spelling, "value").Value, parsed.GetValue(json));
        });
    }

    static bool LooksLikeAngle(string text) =>
        text.Contains('°') || text.Contains("deg", StringComparison.OrdinalIgnoreCase) || text.Contains("rad", StringComparison.OrdinalIgnoreCase);

    static void Show(Desk desk, WrittenLength length, bool json)
    {
        var fraction = LengthWriter.Write(length.Mm, LengthStyle.FractionInches());
        if (json)
        {
            desk.WriteJson(new { length.Mm, Inch = length.Mm / Inch.Mm, Fraction = fraction, Unit = length.Unit.ToString().ToLowerInvariant(), PlusMinusMm = length.PlusMinus, RepeatsMm = length.Repeats });
            return;
        }
        desk.Out.WriteLine(LengthWriter.Write(length.Mm, LengthStyle.Millimetres(4)));
        desk.Out.WriteLine(LengthWriter.Write(length.Mm, LengthStyle.DecimalInches(5)));
        desk.Out.WriteLine(fraction);
        if (length.PlusMinus is { } half) desk.Out.WriteLine($"± {LengthWriter.Write(half, LengthStyle.Millimetres(4))}");
    }

    static void Show(Desk desk, WrittenAngle angle, bool json)
    {
        if (json)
        {
            desk.WriteJson(new { angle.Radians, Degrees = angle.Radians * 180 / Math.PI, PlusMinusRadians = angle.PlusMinus, RepeatsRadians = angle.Repeats });
            return;
        }
        desk.Out.WriteLine(AngleWriter.Write(angle.Radians, AngleStyle.DecimalDegrees, 4));
        desk.Out.WriteLine(AngleWriter.Write(angle.Radians, AngleStyle.DegreesMinutes));
        desk.Out.WriteLine($"{angle.Radians:0.000000} rad");
    }
}
