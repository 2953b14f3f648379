namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>
/// What was read on a part in space, or which condition holds. c = distance between centres, d = diameter. A corner is its own
/// centre. "Face" is a plane, "line" an edge or a cylinder's axis.
/// </summary>
public enum SolidReadingKind
{
    /// <summary>c, mm. Point or hole to point or hole.</summary>
    Distance,

    /// <summary>c + (d₁ + d₂)/2, mm: over the far sides of two holes of one face, or over pins in them.</summary>
    OverHoles,

    /// <summary>c − (d₁ + d₂)/2, mm: between the near sides of two holes of one face.</summary>
    BetweenHoles,

    /// <summary>Distance between the two corners of an edge, mm. From = edge.</summary>
    LengthAlongEdge,

    /// <summary>Distance of the centre from a line, mm. From = point or hole, To = edge or cylinder.</summary>
    PointToEdge,

    /// <summary>Distance of the centre from a line less d/2, mm. From = hole, To = edge.</summary>
    HoleToEdge,

    /// <summary>Distance of two (nearly) parallel edges, mm, taken at the middle of the first, or opposite <see cref="SolidReading.At"/> where it has no corners.</summary>
    AcrossEdges,

    /// <summary>Distance of the centre from a face, mm; also the depth of a point below it. From = point or hole, To = plane.</summary>
    PointToPlane,

    /// <summary>From a face to the near side of a hole or cylinder whose axis runs along it, mm. To = plane.</summary>
    NearSideToPlane,

    /// <summary>From a face over the far side of a hole or cylinder, mm. To = plane.</summary>
    FarSideToPlane,

    /// <summary>Depth between two (nearly) parallel faces, mm. From, To = planes. Taken square to the second, opposite <see cref="SolidReading.At"/>.</summary>
    Depth,

    /// <summary>Thickness between two (nearly) parallel faces, mm; as <see cref="Depth"/>.</summary>
    Thickness,

    /// <summary>Height over the surface plate, mm. From = point, hole (its centre) or plane (opposite <see cref="SolidReading.At"/>), To = set-up.</summary>
    Height,

    /// <summary>Height of the top of a pin in a hole at its mouth, or of a cylinder, mm. To = set-up.</summary>
    HeightOverPin,

    /// <summary>Height of the lowest place of a hole's mouth, or of the underside of a cylinder, mm. To = set-up.</summary>
    HeightUnderPin,

    /// <summary>d, mm. From = hole or cylinder.</summary>
    Diameter,

    /// <summary>Angle between two faces, lines or axes, or a face and a line, radians in (0, π); the angle or its supplement, whichever is nearer.</summary>
    Angle,

    /// <summary>(x, y) on a face as seen from outside, mm, in a frame of its own with unknown shift and turn. From = point or hole, To = plane.</summary>
    OnFace,

    /// <summary>Condition: a point or hole centre lies on a face, line, cylinder or the rim of a hole; or an edge in a face. Value 0; ± in mm.</summary>
    On,

    /// <summary>Condition: two faces, lines or axes run parallel, or a line along a face. Value 0; ± in radians.</summary>
    Parallel,

    /// <summary>Condition: two faces, lines or axes are square, or a line stands square to a face. Value 0; ± in radians.</summary>
    Square,
}

/// <summary>One measured value or condition in space.</summary>
/// <param name="Index">Place in the sample's list, from 0.</param>
/// <param name="Value">mm or radians, as the kind says.</param>
/// <param name="Sigma">Standard uncertainty, same unit; 0 for an exact condition, positive for all else.</param>
public sealed record SolidReading(int Index, SolidReadingKind Kind, string From, string? To, double Value, double Sigma)
{
    /// <summary>y on a face, mm.</summary>
    public double ValueY { get; init; }

    /// <summary>The paper or setting that a reading on a face was taken in; those of one face and frame share its shift and turn.</summary>
    public string Frame { get; init; } = "";

    /// <summary>Feature opposite which a face was touched or a cylinder read; null: the first point or hole on the face, else the first of the sample.</summary>
    public string? At { get; init; }

    /// <summary>Known diameter of the pins used, mm; null: the pin fills the hole, and the hole's own diameter counts.</summary>
    public double? Pin { get; init; }

    public string Instrument { get; init; } = "";

    /// <summary>The value just as the person wrote it.</summary>
    public string Written { get; init; } = "";

    /// <summary>Face whose flat survey the reading comes from; null for the solid survey's own.</summary>
    public string? FlatFace { get; init; }

    /// <summary>Its index in the flat survey.</summary>
    public int FlatIndex { get; init; }

    /// <summary>A condition that holds exactly.</summary>
    public bool Exact => Sigma == 0;
}
