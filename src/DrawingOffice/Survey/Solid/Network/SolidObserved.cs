namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>The few sorts of equation that all readings in space come down to.</summary>
enum Form
{
    /// <summary>Distance of two places plus share × both radii.</summary>
    Gap,

    /// <summary>Distance of a place from a line plus share × its radius.</summary>
    OffLine,

    /// <summary>Distance of a point from a cylinder's axis less the cylinder's radius.</summary>
    OnSurface,

    /// <summary>Height of a place over a plane plus share × how far its rim reaches up.</summary>
    Over,

    /// <summary>Height of a plane over a plane, opposite the spot.</summary>
    Opposite,

    /// <summary>Diameter.</summary>
    Size,

    /// <summary>Angle of two directions, or its supplement, whichever is nearer the reading.</summary>
    Angle,

    /// <summary>Cosine of two directions, times the lever where the part says so.</summary>
    Lean,

    /// <summary>One of the two components of a direction across another.</summary>
    Skew,

    /// <summary>One of the two components, across a line, of a place's distance from it.</summary>
    Beside,

    /// <summary>
    /// In the face that is its spot: how far a place lies beside a line, or (part 1) a direction beside another. On one face one equation
    /// says what two would say in space, the other following from the face.
    /// </summary>
    Aside,

    /// <summary>Distance of a point from the plane of a hole's mouth.</summary>
    RimFlat,

    /// <summary>Distance of a point from a hole's centre less its radius.</summary>
    RimRound,

    /// <summary>x or y on a face.</summary>
    OnFace,

    /// <summary>A direction's length keeps to the lever. Nothing else reads the length, so the row takes and gives nothing.</summary>
    Length,

    /// <summary>A line's place keeps nearest the middle; likewise without effect.</summary>
    Foot,

    /// <summary>The direction of x of a frame keeps to its face; likewise.</summary>
    FrameFlat,
}

/// <summary>One observation equation.</summary>
/// <param name="To">Feature, or first unknown of a direction (Length); −1 for none.</param>
/// <param name="Spot">Feature opposite which it is taken, −1 for the middle; first unknown of the frame on a face.</param>
/// <param name="Share">How much of the radius counts: 1 far side, −1 near side, 0 centre.</param>
/// <param name="Pin">Known diameter of the pin; 0 where the feature's own counts.</param>
/// <param name="Reading">−1 for what follows from the features themselves.</param>
/// <param name="Part">Which component.</param>
/// <param name="Signed">Sides are told apart (surface plate, conditions); else the distance is never negative.</param>
readonly record struct SolidObserved(Form Form, int From, int To, int Spot, double Share, double Pin, double Value, double Sigma, int Reading, int Part, bool Signed);
