using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Rails;

public enum RailKind { Z, C, TopHat, L }

public enum Hand { Left, Right, Both }

public enum RailFace { Web, LowerFlange, UpperFlange, LowerLip, UpperLip }

/// <summary>From where a place on a face is measured across the rail.</summary>
public enum AcrossFrom
{
    /// <summary>On the web, from its lower outside edge; on a flange, from the web's outside; on a lip, from the flange's outside.</summary>
    Edge,

    /// <summary>From the free edge inwards; on the web, from its upper outside edge down.</summary>
    FarEdge,

    Middle,
}

/// <summary>What is measured at one place along a rail. Sizes are outside, to where the surfaces would meet.</summary>
/// <param name="At">Along a straight base line, mm; rising from station to station.</param>
/// <param name="Web">Height of the web, square to its lower edge, mm.</param>
/// <param name="Lower">Width of the lower flange from the web's outside, mm; on a top hat the lower wall.</param>
/// <param name="Upper">The same of the upper one; not used on an L.</param>
public sealed record Station(double At, double Web, double Lower, double Upper)
{
    /// <summary>Of the return lip on the lower flange; on a top hat its brim. From the flange's outside, mm; 0 for none.</summary>
    public double LowerLip { get; init; }

    public double UpperLip { get; init; }

    /// <summary>How far the web stands out of the plane it began in, mm, positive to the side that is seen: a crank or joggle.</summary>
    public double Plan { get; init; }

    /// <summary>Height of the web's lower edge over the base line, mm: a sweep in the web's own plane.</summary>
    public double Level { get; init; }

    /// <summary>How far the section is turned about its lower edge against the first station, radians, positive turns the top to the side that is seen.</summary>
    public double Turn { get; init; }

    /// <summary>
    /// The straights that meet here are joined by an arc of this radius, mm, tangent to both: of the web's middle layer in plan, of its
    /// lower edge in elevation (the upper edge is concentric). 0: they meet in a corner, in plan a crease of the rail's own inside radius.
    /// </summary>
    public double Ease { get; init; }
}

/// <summary>Something cut into a face of a rail.</summary>
/// <param name="Id">Unique on the rail.</param>
/// <param name="At">Along the base line like the stations, mm.</param>
/// <param name="Across">Outside, mm, on the face, square to its edge.</param>
/// <param name="Shape">About its own middle at the origin, x along the rail, mm.</param>
/// <param name="Nut">A captive or weld nut to be fixed here, in words; null for none.</param>
public sealed record RailHole(string Id, RailFace Face, double At, AcrossFrom From, double Across, Opening Shape, string? Nut = null);

/// <summary>
/// A rail of sheet: a section given at stations. Between stations every size runs straight; where straights meet they are eased by an arc.
/// Seen from the side that is drawn: x along, height up; a C's flanges, a Z's lower and an L's come towards the eye. This is the left hand.
/// </summary>
/// <param name="Thickness">mm.</param>
/// <param name="InsideRadius">Of every fold along the rail, mm.</param>
public sealed record Rail(string Title, RailKind Kind, double Thickness, double InsideRadius, ImmutableArray<Station> Stations)
{
    public Hand Hand { get; init; } = Hand.Left;

    /// <summary>Of the folds between web and flanges from flat, radians, 20° to 120°.</summary>
    public double LowerAngle { get; init; } = Math.PI / 2;

    public double UpperAngle { get; init; } = Math.PI / 2;

    /// <summary>Of the folds between flanges and lips, from flat, radians, 20° to 120°.</summary>
    public double LipAngle { get; init; } = Math.PI / 2;

    public ImmutableArray<RailHole> Holes { get; init; } = [];
}
