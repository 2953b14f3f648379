using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>Seen from the side the beads rise to: x to the right, y up, the lower left corner at the origin.</summary>
public enum PanelSide { Left, Right, Bottom, Top }

/// <summary>An edge stiffened by a wire or a hem, mm.</summary>
/// <param name="Wire">Diameter; null for a hem.</param>
/// <param name="Width">Of the hem.</param>
/// <param name="InsideRadius">Of the hem; 0 closed flat.</param>
/// <param name="Folds">Of the hem, 1 or 2.</param>
public sealed record Edging(PanelSide Side, double? Wire, double Width = 0, double InsideRadius = 0, int Folds = 1)
{
    /// <summary>As a person calls it, such as "left hem".</summary>
    public string Name => $"{Side} {(Wire is null ? "hem" : "wired edge")}".ToLowerInvariant();

    /// <summary>How far it lies over the finished panel from its edge, mm: the hem's width, or the roll round the wire.</summary>
    public double Takes(double thickness) => Wire is { } wire ? wire + 2 * thickness : Width;
}

/// <summary>A panel as it is wanted, mm: its beads run along y, in the middle of its length.</summary>
/// <param name="Material">By the beginning of its name.</param>
/// <param name="Width">Finished, across the beads.</param>
/// <param name="Length">Finished, along the beads.</param>
public sealed record Panel(string Title, string Material, double Thickness, double Width, double Length)
{
    public BeadRow? Beads { get; init; }

    public ImmutableArray<FlangedHole> Holes { get; init; } = [];

    public ImmutableArray<Edging> Edges { get; init; } = [];

    /// <summary>Play between former and die beyond the sheet, as a share of its thickness (common practice).</summary>
    public double Clearance { get; init; } = 0.1;
}
