using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>A corner or a pricked mark.</summary>
/// <param name="Std">Half of the longest axis of its standard ellipsoid, mm.</param>
/// <param name="Loose">Not held by the readings: drawn dashed, and its place is no figure to work to.</param>
public sealed record SolidPoint(string Id, Vec3 At, double? Std, bool Loose);

/// <summary>A straight edge as far as it is known.</summary>
/// <param name="Length">Between its two corners; null where it has none.</param>
public sealed record SolidLine(string Id, Vec3 A, Vec3 B, Uncertain? Length, bool Loose);

/// <summary>A hole, or a round bar or tube by its axis.</summary>
/// <param name="Axis">Length 1.</param>
/// <param name="Long">Along the axis, mm, from the centre half each way; 0 for a hole, which is drawn where it breaks its face.</param>
public sealed record SolidRound(string Id, Vec3 Centre, Vec3 Axis, Uncertain? Diameter, double Long, double? Std, bool Loose);

/// <summary>A flat face.</summary>
/// <param name="Normal">Length 1.</param>
/// <param name="At">Amid what was measured on it.</param>
/// <param name="Outline">Corner after corner where edges close round it, else empty: such a face hides nothing.</param>
public sealed record SolidFace(string Id, Vec3 At, Vec3 Normal, ImmutableArray<Vec3> Outline, bool Loose);

/// <summary>How two faces stand to one another.</summary>
/// <param name="Angle">As a bevel laid in the corner between them reads it, radians.</param>
/// <param name="Apart">For faces that are parallel within 1°: their distance amid the second, mm.</param>
public sealed record FacePair(string A, string B, Uncertain? Angle, Uncertain? Apart);

/// <summary>How far a feature stands off a face, mm; over it on the side that its normal points to.</summary>
public sealed record FaceHeight(string Face, string Id, Uncertain? Height);

/// <summary>A measured solid as it is drawn, in the drawing's own axes: x to the right, y away, z up, mm.</summary>
/// <param name="Notes">What the drawing does not say: which way it lies, what is loose.</param>
public sealed record SolidPart(
    string Title, ImmutableArray<SolidPoint> Points, ImmutableArray<SolidLine> Lines, ImmutableArray<SolidRound> Rounds, ImmutableArray<SolidFace> Faces,
    ImmutableArray<FacePair> Pairs, ImmutableArray<FaceHeight> Heights, ImmutableArray<string> Notes)
{
    /// <summary>All that has a place.</summary>
    internal IEnumerable<Vec3> Extent =>
    [
        .. Points.Select(p => p.At), .. Lines.SelectMany(l => new[] { l.A, l.B }), .. Rounds.SelectMany(Ends), .. Faces.SelectMany(f => f.Outline),
    ];

    static IEnumerable<Vec3> Ends(SolidRound r) =>
        new[] { r.Centre - r.Axis * (r.Long / 2), r.Centre + r.Axis * (r.Long / 2) }.SelectMany(c => Wire.Circle(new(c, r.Axis, Radius(r)), "").Points);

    internal static double Radius(SolidRound r) => Math.Max(0, r.Diameter?.Value ?? 0) / 2;
}
