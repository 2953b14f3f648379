using System.Collections.Immutable;

namespace WitnessMark.PrintRoom;

/// <summary>How wide a line is and how it is broken, mm: dash, gap, dash, gap; no dashes for a continuous line.</summary>
public readonly record struct Pen(double Width, ImmutableArray<double> Dashes)
{
    public bool Continuous => Dashes.IsDefaultOrEmpty;
}

/// <summary>
/// The pen of each line type in the manner of ISO 128: wide and narrow lines in the ratio 2 : 1, dashes as multiples of the width d
/// (dashed 12 d, gap 3 d; long dashed dotted 24 d, gap 3 d, dot d/2). A bend line is continuous and narrow.
/// </summary>
public static class Pens
{
    public const double Wide = 0.5;
    public const double Narrow = 0.25;

    static readonly Pen s_wide = new(Wide, []);
    static readonly Pen s_narrow = new(Narrow, []);
    static readonly Pen s_dashed = new(Narrow, [12 * Narrow, 3 * Narrow]);
    static readonly Pen s_chain = new(Narrow, [24 * Narrow, 3 * Narrow, Narrow / 2, 3 * Narrow]);

    public static Pen Of(Stroke stroke) => stroke switch
    {
        Stroke.Outline or Stroke.Cut => s_wide,
        Stroke.Hidden => s_dashed,
        Stroke.Centre => s_chain,
        _ => s_narrow,
    };

    /// <summary>The pen a mark is drawn with: lettering by its height, a path by its own width where it has one.</summary>
    public static Pen Of(Mark mark) => mark switch
    {
        TextMark m => new(m.Height * Letters.Lettering.Pen, []),
        PathMark { PenWidth: > 0 and var width } => new(width, []),
        _ => Of(mark.Stroke),
    };
}
