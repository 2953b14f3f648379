using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>A place off the photograph, mm on the traced face, with its ± but for what all places of the frame share (<see cref="FrameScale"/>).</summary>
/// <param name="Outside">It lies outside the marks, where the camera is extrapolated.</param>
public readonly record struct Spot(Vec2 At, Spread Spread, bool Outside);

/// <summary>
/// What all places of one photograph share: its picks may be wrong by this much of every length together (print, height of the face).
/// Shift and turn of a frame are free anyhow.
/// </summary>
/// <param name="Std">Standard ± of the scale, as a share of 1.</param>
public readonly record struct FrameScale(double Std);

/// <summary>A hole fitted as a circle.</summary>
/// <param name="Diameter">mm, ± with the frame's scale left out, as with the centre.</param>
/// <param name="Scatter">Root mean square distance of the edge points from the circle, mm.</param>
/// <param name="Share">Share of the rim that was seen, 0 to 1.</param>
/// <param name="Px">The rim in the picture, for showing.</param>
public sealed record HoleSeen(Spot Centre, Uncertain Diameter, double Scatter, double Share, ImmutableArray<Vec2> Px);
