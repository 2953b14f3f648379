using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasurePhoto;

/// <summary>What is pointed out: a hole by a click inside it, a corner by a click on it, an outline by clicks along it.</summary>
public enum PickKind { Hole, Corner, Outline }

/// <summary>One thing pointed out in the photograph.</summary>
/// <param name="Name">Names the feature; an outline's corners and sides are numbered behind it.</param>
/// <param name="Clicks">px of the upright picture, x to the right, y down: one, or two and more along an outline.</param>
/// <param name="Closed">The outline comes back to its first click.</param>
public sealed record PhotoPick(string Name, PickKind Kind, ImmutableArray<Vec2> Clicks, bool Closed = false);

/// <summary>All that a person says about a photograph; kept and typed as JSON (docs/guide/photo.md).</summary>
public sealed record PhotoWork
{
    /// <summary>Paper of the target sheet: a4, a3 or letter; null lets its marks say.</summary>
    public string? Target { get; init; }

    /// <summary>The check line across the sheet as measured, mm; null when nobody measured it.</summary>
    public double? CheckX { get; init; }

    /// <summary>The check line up the sheet as measured, mm.</summary>
    public double? CheckY { get; init; }

    /// <summary>Height of the traced face above the sheet, mm; null when it was not said.</summary>
    public double? Thickness { get; init; }

    /// <summary>± of the thickness (19 in 20), mm.</summary>
    public double ThicknessWithin { get; init; } = 0.1;

    /// <summary>Focal length as on 36 × 24 mm film, mm, where the camera told it; null otherwise.</summary>
    public double? Focal35 { get; init; }

    /// <summary>Corners picked by hand, at least four; empty lets the target be found.</summary>
    public ImmutableArray<Tie> Corners { get; init; } = [];

    public ImmutableArray<PhotoPick> Picks { get; init; } = [];

    /// <summary>px: width of the picture that the places count in; null where it is the picture itself.</summary>
    public int? Across { get; init; }

    /// <summary>The same with its places in a picture of another width.</summary>
    public PhotoWork In(int width)
    {
        if (Across is not { } across || across == width) return this with { Across = width };
        var by = width / (double)across;
        return this with
        {
            Across = width,
            Corners = [.. Corners.Select(c => c with { Px = c.Px * by })],
            Picks = [.. Picks.Select(p => p with { Clicks = [.. p.Clicks.Select(c => c * by)] })],
        };
    }

    /// <summary>A name for the next one of a kind that no other has: H1, C1, E1.</summary>
    public string Free(PickKind kind, IEnumerable<string> taken)
    {
        var used = Picks.Select(p => p.Name).Concat(taken).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var letter = kind switch { PickKind.Hole => 'H', PickKind.Corner => 'C', _ => 'E' };
        return Enumerable.Range(1, int.MaxValue).Select(n => $"{letter}{n}").First(n => !used.Contains(n));
    }
}
