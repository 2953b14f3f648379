using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// A sine bar on slips: height = L sin(angle) between roller middles. Its ± grows as 1/cos: past 45° a bar is not the tool, and past 60° a
/// small error of height turns it visibly.
/// </summary>
public static class SineBar
{
    /// <summary>Standard uncertainty of the roller distance where none is given: ±0.005 mm, anywhere within alike (common practice).</summary>
    public static double UsualStd { get; } = 0.005 / Math.Sqrt(3);

    /// <param name="angle">Radians, over 0 up to 85°.</param>
    /// <param name="bar">Between roller middles, mm, 20 to 1,000.</param>
    /// <param name="barStd">Standard uncertainty of it, mm.</param>
    public static Parsed<SineSetting> Set(double angle, double bar, SlipSet set, string grade = "1", double wear = 0, double? barStd = null)
    {
        var degrees = angle * 180 / Math.PI;
        if (!(degrees is > 0 and <= 85)) return Refusal.Of("angle", $"{degrees:0.###}°", "a sine bar is set over 0 up to 85°; above that set what is wanting to 90° and use a square");
        if (!(bar is >= 20 and <= 1000)) return Refusal.Of("bar", $"{bar:0.###} mm", "give the distance of the rollers, 20 to 1000 mm");
        var exact = bar * Math.Sin(angle);
        var stack = Stacks.Find(set, exact, grade, wear);
        if (!stack.Ok) return stack.Refusal!;
        var height = stack.Value.Height;
        var given = Math.Asin(Math.Min(1, height.Value / bar));
        var (byHeight, byBar) = (height.Std / (bar * Math.Cos(given)), Math.Tan(given) * (barStd ?? UsualStd) / bar);
        return new SineSetting(angle, bar, exact, stack.Value, new(given, Math.Sqrt(byHeight * byHeight + byBar * byBar)), Cautions(degrees));
    }

    static ImmutableArray<Caution> Cautions(double degrees) => degrees switch
    {
        > 60 => [Of($"At {degrees:0.#}° a sine bar turns visibly for an error of height that is not seen: set {90 - degrees:0.##}° instead and hold the work on a square or an angle plate.")],
        > 45 => [Of($"Past 45° a sine bar loses its sharpness, and the bar grows top-heavy: better set {90 - degrees:0.##}° from the upright.")],
        _ => [],
    };

    static Caution Of(string words) => new(CautionKind.OutsideRange, words, []);
}
