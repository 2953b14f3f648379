using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>A place picked by hand: where it is in the picture (px) and on the sheet (mm, from the target's middle, y up).</summary>
public readonly record struct Tie(Vec2 Px, Vec2 Mm);

/// <summary>What is known beside the photograph itself.</summary>
/// <param name="Target">The sheet in the picture; null lets the marks say which it is.</param>
public sealed record PhotoAsked(Target? Target = null)
{
    /// <summary>How long the sheet's check lines came out.</summary>
    public PrintScale Print { get; init; } = PrintScale.Unmeasured;

    /// <summary>Focal length as if on 24 x 36 mm film, mm, as cameras write into their pictures; null when unknown.</summary>
    public double? Focal35 { get; init; }

    /// <summary>Height of the traced face above the sheet, mm, with its ±; null when it was not stated.</summary>
    public Uncertain? Height { get; init; }

    /// <summary>Corners picked by hand, at least four; empty lets the target be found.</summary>
    public ImmutableArray<Tie> Corners { get; init; } = [];

    /// <summary>Standard ± of a corner picked by hand, px.</summary>
    public double CornerStd { get; init; } = 1.5;
}

/// <summary>
/// True length over drawn length of the print, along its width (x) and its height (y), each with a standard ±.
/// </summary>
public sealed record PrintScale(Uncertain X, Uncertain Y, bool Measured)
{
    /// <summary>
    /// What is assumed of a print that nobody measured: 1 ± 1 % in both directions together and ± 0.3 % between them (common practice:
    /// a page fitted to its paper comes out 3 to 6 % small, and that is not covered; the caution says to measure).
    /// </summary>
    public static PrintScale Unmeasured { get; } = new(new(1, 0.01), new(1, 0.01), false);

    /// <summary>Both check lines as read, mm, with the standard ± of a reading (default: a steel rule or calliper over lines, 0.1 mm).</summary>
    public static Parsed<PrintScale> Of(double readX, double readY, double std = 0.1)
    {
        if (!(readX is > 80 and < 120)) return Refusal.Of("check line across", Figure(readX), "the length read, near 100 mm: 80 to 120");
        if (!(readY is > 80 and < 120)) return Refusal.Of("check line up", Figure(readY), "the length read, near 100 mm: 80 to 120");
        if (!(std is > 0 and <= 2)) return Refusal.Of("check line ±", Figure(std), "above 0 and at most 2 mm");
        return new PrintScale(new(readX / Target.CheckLength, std / Target.CheckLength), new(readY / Target.CheckLength, std / Target.CheckLength), true);
    }

    /// <summary>Standard ± of what both directions share; a frame of picks takes it as its scale's.</summary>
    public double CommonStd => Measured ? Math.Sqrt(X.Std * X.Std + Y.Std * Y.Std) / 2 : X.Std;

    /// <summary>Standard ± of half the difference between the two directions.</summary>
    public double AcrossStd => Measured ? CommonStd : 0.003;

    static string Figure(double value) => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
}
