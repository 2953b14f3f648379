using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.FrontOffice.DrawPart;

/// <summary>How a person's choice of units is written on a drawing.</summary>
public static class Writings
{
    public static Writing Of(LengthStyle style) => style.Notation switch
    {
        LengthNotation.Millimetres => Writing.Millimetres,
        LengthNotation.DecimalInches => new((mm, std) => Decimal(mm, std, style), Spread, "in"),
        _ => new((mm, _) => LengthWriter.Write(mm, style), Spread, "in"),
    };

    /// <summary>With a ± to the ± 's own place, without the ± itself and the unit.</summary>
    static string Decimal(double mm, double? std, LengthStyle style) => std is > 0
        ? LengthWriter.Write(new Uncertain(mm, std.Value), style).Split(" ±")[0]
        : LengthWriter.Write(mm, style).Replace(" in", "");

    static string Spread(double mm) => LengthWriter.Write(mm, LengthStyle.DecimalInches()).Replace(" in", "");
}
