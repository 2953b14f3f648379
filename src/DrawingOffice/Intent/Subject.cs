namespace WitnessMark.DrawingOffice.Intent;

/// <summary>What was measured. <see cref="HolePitch"/> is the distance between two hole centres.</summary>
public enum Subject { Hole, Pin, ExternalThread, InternalThread, Sheet, HolePitch, Radius, Length, Angle }

/// <summary>
/// Which of its sizes. Size: diameter, thickness, distance or radius, mm (radians of an angle; outside diameter of a thread).
/// Pitch: thread pitch, mm. Flank: included flank angle, radians. Core: root diameter of a stud or bore of a nut, mm.
/// </summary>
public enum Facet { Size, Pitch, Flank, Core }

/// <summary>How worn or rusted the place looks where it was measured. Unknown is a mixture of the others.</summary>
public enum Condition { Unknown, New, Light, Worn, BadlyWorn }

/// <summary>What lies on the surface: thickness on each face with its standard deviation, mm.</summary>
public sealed record Coat(string Name, double Thickness, double Std)
{
    // Thicknesses are common practice: docs/guide/made-to.md.
    public static Coat Plated { get; } = new("plated", 0.010, 0.005);
    public static Coat Galvanised { get; } = new("galvanised", 0.060, 0.025);
    public static Coat Painted { get; } = new("painted", 0.090, 0.040);
}
