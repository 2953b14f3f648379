using WitnessMark.DrawingOffice.Sections;

namespace WitnessMark.DrawingOffice.Beads;

public enum BeadKind
{
    /// <summary>A round crown that runs into the panel by a small radius on each side.</summary>
    Round,

    /// <summary>Two slopes and a rounded ridge.</summary>
    Vee,

    /// <summary>A flat top and two slopes.</summary>
    Flat,

    /// <summary>A step: the panel beyond lies higher by the depth.</summary>
    Joggle,
}

/// <summary>A bead, swage or joggle as wanted in the finished panel, mm. Radii are inside ones, on the hollow side of each bend.</summary>
/// <param name="Depth">Panel to crown, the same side of the sheet.</param>
/// <param name="Width">
/// Round: between the lines where the panel stops being flat. V and flat: between the lines where the slopes would meet the panel. Joggle: from
/// where the slope would leave the one level to where it would meet the other.
/// </param>
/// <param name="Length">Of full and fading bead together.</param>
/// <param name="EdgeRadius">Where it leaves the panel.</param>
/// <param name="CrownRadius">Of the ridge of a V or the two corners of a flat top or joggle; follows from width and depth for a round bead.</param>
/// <param name="Top">Flat width between the slopes' corners; flat kind only.</param>
/// <param name="RunOut">Length over which it fades at each end; 0 runs out over the panel's edge.</param>
public sealed record Bead(BeadKind Kind, double Depth, double Width, double Length, double EdgeRadius, double CrownRadius, double Top, double RunOut);

/// <summary>A row of like beads across a panel, mm.</summary>
/// <param name="Width">Of the finished panel, across the beads.</param>
/// <param name="Length">Of the finished panel, along the beads.</param>
/// <param name="Pitch">Between their middles; their row is centred in the panel.</param>
public sealed record BeadedPanel(string Title, double Thickness, double Width, double Length, Bead Bead, int Count, double Pitch, string Material);

/// <summary>The sheet of a bead seen end-on, at mid-thickness, in a frame whose x axis is the middle of the flat panel.</summary>
/// <param name="Turn">Steepest slope, radians from the panel.</param>
public sealed record BeadLine(Chain Middle, double Chord, double Developed, double Turn)
{
    /// <summary>How much more sheet it takes than the flat it stands on, mm.</summary>
    public double Extra => Developed - Chord;

    /// <summary>Mean stretch across if the panel gives nothing, as a share.</summary>
    public double Stretch => Developed / Chord - 1;
}
