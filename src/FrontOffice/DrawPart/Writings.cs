using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.Maths.Units;

namespace WitnessMark.FrontOffice.DrawPart;

/// <summary>How a person's choice of units is written on a drawing.</summary>
public static class Writings
{
    public static Writing Of(LengthStyle style) => style.Notation switch
    {
        LengthNotation.Millimetres => Writing.Millimetres,
        LengthNotation.DecimalInches => Writing.Inches,
        _ => Writing.Inches with { Length = (mm, _) => LengthWriter.Write(mm, style) },
    };
}
