namespace WitnessMark.DrawingOffice.Survey;

/// <summary>
/// What was read, or which condition holds. c = distance between centres, d = diameter.
/// From and To name features; a corner is its own centre; a slot answers by its middle.
/// </summary>
public enum ReadingKind
{
    /// <summary>c, mm.</summary>
    CentreDistance,

    /// <summary>c + (d₁ + d₂)/2, mm: over the far sides of two holes.</summary>
    OutsideOverHoles,

    /// <summary>c − (d₁ + d₂)/2, mm: between the near sides of two holes.</summary>
    InsideBetweenHoles,

    /// <summary>Distance of the centre from the straight edge less d/2, mm. From = hole, To = edge.</summary>
    EdgeToHole,

    /// <summary>Distance of the centre from the straight edge, mm. From = point, hole, slot or arc, To = edge.</summary>
    CentreToEdge,

    /// <summary>Distance between the two corners of an edge, mm. From = edge.</summary>
    LengthAlongEdge,

    /// <summary>Distance of two (nearly) parallel edges, mm; taken at the middle of an edge with corners, else opposite the first placed feature. From, To = edges.</summary>
    AcrossEdges,

    /// <summary>d, mm. From = hole.</summary>
    Diameter,

    /// <summary>mm. From = slot.</summary>
    SlotWidth,

    /// <summary>Over the round ends: distance of the end centres plus the width, mm. From = slot.</summary>
    SlotLength,

    /// <summary>By radius gauge, mm. From = arc.</summary>
    Radius,

    /// <summary>Distance between an arc's end corners, mm. From = arc.</summary>
    Chord,

    /// <summary>Height of an arc over its chord, mm. From = arc.</summary>
    Rise,

    /// <summary>Angle between two edges, radians in (0, π): between their directions From → To, or its supplement, whichever is nearer.</summary>
    AngleBetweenEdges,

    /// <summary>(x, y) off squared paper or a picture, mm, in a frame of its own with unknown shift and turn. From = point, hole, slot or arc.</summary>
    Picked,

    /// <summary>Condition: a point, hole, slot or arc centre lies on the edge, or a point on the arc. Value 0.</summary>
    On,

    /// <summary>Condition: two edges (or slots) run parallel. Value 0; ± in radians.</summary>
    Parallel,

    /// <summary>Condition: two edges (or slots) are square. Value 0; ± in radians.</summary>
    Square,

    /// <summary>Condition: an edge is tangent to an arc or hole, or two arcs to each other. Value 0.</summary>
    Tangent,
}

/// <summary>One measured value or condition.</summary>
/// <param name="Index">Place in the sample's list, from 0.</param>
/// <param name="Value">mm or radians, as the kind says.</param>
/// <param name="Sigma">Standard uncertainty, same unit; 0 for an exact condition, positive for all else.</param>
public sealed record Reading(int Index, ReadingKind Kind, string From, string? To, double Value, double Sigma)
{
    /// <summary>y of a picked place, mm.</summary>
    public double ValueY { get; init; }

    /// <summary>The paper or picture that a pick was taken from; picks of one frame share its shift and turn.</summary>
    public string Frame { get; init; } = "paper";

    public string Instrument { get; init; } = "";

    /// <summary>The value just as the person wrote it.</summary>
    public string Written { get; init; } = "";

    /// <summary>A condition that holds exactly.</summary>
    public bool Exact => Sigma == 0;
}
