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
/// <param name="CrownRadius">Of the ridge of a V or the corners of a flat top or joggle; a round bead's follows from width and depth.</param>
/// <param name="Top">Flat kind: width between the lines where slopes and top would meet.</param>
/// <param name="RunOut">Length over which it fades at each end; 0 runs out over the panel's edge.</param>
public sealed record Bead(BeadKind Kind, double Depth, double Width, double Length, double EdgeRadius, double CrownRadius = 0, double Top = 0, double RunOut = 0);

/// <summary>Like beads side by side.</summary>
/// <param name="Pitch">Between their middles, mm; passed over for one.</param>
/// <param name="Middle">Of the row, from the panel's left edge, mm.</param>
public sealed record BeadRow(Bead Bead, int Count, double Pitch, double Middle)
{
    /// <summary>What a person calls one of them: a step is no bead.</summary>
    public string Name => Bead.Kind == BeadKind.Joggle ? "joggle" : "bead";

    /// <summary>One of them, counted from the left where there are more.</summary>
    public string Named(int bead) => Count == 1 ? $"the {Name}" : $"{Name} {bead + 1}";

    /// <summary>All of them.</summary>
    public string Whole => Count == 1 ? $"the {Name}" : $"the {Name}s";

    /// <summary>Middles of the beads from the panel's left edge, mm.</summary>
    public double Place(int bead) => Middle + (bead - (Count - 1) / 2.0) * Pitch;

    /// <summary>From the middle of the row outwards, one side and the other in turn: the sheet is drawn in from the free edges and not dammed up between beads.</summary>
    public IEnumerable<int> CentreOut => Enumerable.Range(0, Count).OrderBy(i => Math.Abs(2 * i - (Count - 1))).ThenBy(i => i);
}
