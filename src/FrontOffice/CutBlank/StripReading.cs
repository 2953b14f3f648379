using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.CutBlank;

/// <summary>
/// A test strip as written: its length before folding, its two outside legs after, angle, inside radius and thickness, each with
/// units and, where the person says it, a ±. Without one the calliper's ± stands for lengths and the protractor's for the angle.
/// </summary>
public sealed record StripReading(string Strip, string FirstLeg, string SecondLeg, string Angle, string Radius, string Thickness)
{
    /// <summary>A stated ± is kept by 19 readings in 20 (JCGM 100, 6.3.3).</summary>
    const double Coverage = 2;

    /// <exception cref="RefusedException">A value is not a length or angle, or the readings cannot belong to one bend.</exception>
    public TestBend Run() => TestBend.From(new(
        Length(Strip, "strip"), Length(FirstLeg, "first leg"), Length(SecondLeg, "second leg"),
        Turn(Angle), Length(Radius, "radius"), Length(Thickness, "thickness"))).Value;

    static Uncertain Length(string written, string field)
    {
        var length = Lengths.Read(written, TradeSpelling.Of(), field).Value;
        return new(length.Mm, length.PlusMinus / Coverage ?? Usual("calliper"));
    }

    static Uncertain Turn(string written)
    {
        var angle = Angles.Read(written, TradeSpelling.Of(), "angle").Value;
        return new(angle.Radians, angle.PlusMinus / Coverage ?? Usual("protractor"));
    }

    static double Usual(string instrument) => Instrument.Usual.First(i => i.Name == instrument).StandardUncertainty();
}
