using WitnessMark.DrawingOffice.Sections;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>How a bead fades: its depth falls along half a cosine wave, level at both ends.</summary>
public static class RunOut
{
    /// <summary>Share of the full depth at a distance from the bead's end.</summary>
    public static double Depth(double from, double length) =>
        length <= 0 || from >= length ? 1 : from <= 0 ? 0 : (1 - Math.Cos(Math.PI * from / length)) / 2;

    /// <summary>Mean stretch of the crown line over the run-out, as a share; 0 for a bead that runs out over the edge.</summary>
    public static double Stretch(double depth, double length) =>
        length <= 0 ? 0 : Gauss.Sum(Math.PI, s => Math.Sqrt(1 + Square(Math.PI * depth / (2 * length) * Math.Sin(Math.PI * s)))) - 1;

    /// <summary>
    /// Stretch that does as much to the metal as two at right angles (von Mises, natural strains, back as a share). With both taken for a panel that
    /// gives nothing it is an upper bound of the mean; where a tool rubs hard the metal may be strained further in one place.
    /// </summary>
    public static double Together(double across, double along)
    {
        var (a, b) = (Math.Log(1 + across), Math.Log(1 + along));
        return Math.Exp(2 / Math.Sqrt(3) * Math.Sqrt(a * a + a * b + b * b)) - 1;
    }

    static double Square(double x) => x * x;
}
