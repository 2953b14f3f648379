using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Forming;

/// <summary>How far a metal stretches evenly before it necks, as a share (0.2 for 20 %).</summary>
public static class UniformElongation
{
    /// <summary>Elongation at break from which a sheet is taken for soft, per cent.</summary>
    const double Soft = 15;

    /// <summary>
    /// About seven tenths of the least elongation at break for a soft sheet, half for a hard one (from memory; a tensile test tells better):
    /// DC01 with 28 % at break bears about 20 %. Null for a material whose elongation is not known.
    /// </summary>
    public static double? Of(Material material) =>
        (material.Elongation.Low ?? material.Elongation.High) is { } atBreak ? (atBreak >= Soft ? 0.7 : 0.5) * atBreak / 100 : null;
}
