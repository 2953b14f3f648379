using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Pieces;

/// <summary>Where a flat piece is bent.</summary>
/// <param name="Line">Middle of the bend in the piece's frame, mm: two points, or more where the crease runs in a curve.</param>
/// <param name="Angle">From flat, radians, positive up, towards the side the drawing shows.</param>
/// <param name="InsideRadius">mm.</param>
/// <param name="Width">Flat strip that the bend takes up, half on each side of the line, mm; 0 for a crease that is only rolled or kinked.</param>
public sealed record Crease(string Id, ImmutableArray<Vec2> Line, double Angle, double InsideRadius, double Width);

/// <summary>A line scribed on a piece and not cut: a station, an element to roll along, the place of the next piece.</summary>
/// <param name="Words">Short; empty for none.</param>
/// <param name="Line">mm; a single point is a spot to prick.</param>
public sealed record Witness(string Words, ImmutableArray<Vec2> Line);

/// <summary>How much a patch of a piece is stretched or shrunk as it is made.</summary>
/// <param name="Edge">Its outline on the flat piece, mm.</param>
/// <param name="Strain">Positive stretched, negative shrunk, 0.05 for 5 %.</param>
/// <param name="Bears">What the metal bears evenly before it necks (or, shrunk, before it is taken to buckle), positive.</param>
public sealed record StrainPatch(ImmutableArray<Vec2> Edge, double Strain, double Bears)
{
    /// <summary>Share of what it bears; over 1 it fails.</summary>
    public double Share => Math.Abs(Strain) / Bears;
}

/// <summary>A piece of sheet to be cut flat, seen from the upper side, mm.</summary>
/// <param name="Name">Unique in its kit.</param>
/// <param name="Outline">Anticlockwise.</param>
public sealed record Piece(string Name, double Thickness, Loop Outline)
{
    public ImmutableArray<Opening> Openings { get; init; } = [];

    public ImmutableArray<Crease> Creases { get; init; } = [];

    public ImmutableArray<Witness> Witnesses { get; init; } = [];

    /// <summary>Patches that are stretched or shrunk; empty for a piece that is only bent.</summary>
    public ImmutableArray<StrainPatch> Strains { get; init; } = [];

    /// <summary>How many alike, of each hand when <see cref="Handed"/>.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>As many again are cut with the drawing turned over.</summary>
    public bool Handed { get; init; }

    /// <summary>A template on paper, printed at full size and wrapped round or laid on: no sheet is bought for it.</summary>
    public bool Paper { get; init; }

    /// <summary>Plain sentences for the drawing.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>All that is cut, both hands.</summary>
    public int Count => Handed ? 2 * Quantity : Quantity;

    /// <summary>Metal in one, mm².</summary>
    public double Area => Outline.Area - Openings.Sum(o => o.Edge.Area);

    public static Piece Of(Blank blank, string? name = null) => new(name ?? blank.Title, blank.Thickness, blank.Outline)
    {
        Openings = [.. blank.Openings],
        Creases = [.. blank.BendLines.Select(b => new Crease(b.Id, [b.MiddleFrom, b.MiddleTo], b.Angle, b.InsideRadius, b.Allowance.Length))],
    };
}
