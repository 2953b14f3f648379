using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Tracing;

/// <summary>A straight edge or an arc of a traced outline, fitted.</summary>
/// <param name="From">Where it begins: a corner with the side before it, or the end of the trace.</param>
/// <param name="Middle">The point of the line or arc half way.</param>
/// <param name="Centre">Of an arc; null for a straight edge.</param>
/// <param name="Radius">mm, of an arc; null for a straight edge.</param>
/// <param name="Direction">Of a straight edge from → to, radians, with its ±; of an arc, of its chord, without.</param>
/// <param name="Scatter">Root mean square distance of the edge points, mm.</param>
public sealed record SideSeen(Spot From, Spot To, Spot Middle, Spot? Centre, Uncertain? Radius, Uncertain Direction, double Scatter, int Points)
{
    public bool Straight => Radius is null;
}

/// <summary>A traced outline as straight edges and arcs; corner k is where side k begins.</summary>
/// <param name="Edge">The edge points found, mm on the face, for showing.</param>
public sealed record OutlineSeen(ImmutableArray<SideSeen> Sides, bool Closed, ImmutableArray<Vec2> Edge)
{
    /// <summary>Where two sides meet.</summary>
    public ImmutableArray<Spot> Corners => [.. Sides.Skip(Closed ? 0 : 1).Select(s => s.From)];
}
