using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>A place off the photograph with the name it bears on the sample.</summary>
/// <param name="Kind">Point, Hole or Arc.</param>
/// <param name="Size">Diameter of a hole or radius of an arc, mm; null for a point.</param>
public sealed record NamedPick(string Id, FeatureKind Kind, Spot Spot, Uncertain? Size = null)
{
    /// <summary>An arc whose two ends are picked off the same edge.</summary>
    public bool BetweenCorners { get; init; }

    public static NamedPick Of(string id, HoleSeen hole) => new(id, FeatureKind.Hole, hole.Centre, hole.Diameter);
}

/// <summary>
/// Places off a photograph as readings of one frame: a pick each, and the diameter or radius where there is one. The frame's shift and turn
/// are free in the survey, its scale by <see cref="FrameScale"/>; a diameter is read by itself, so the scale's ± goes into its own.
/// </summary>
/// <remarks>
/// A pick has one ± for both directions there: the larger half-axis of its ellipse. What picks owe to the one camera together is in each
/// one's ± but not told to the survey as common, so they agree better than they say (<c>OnceOnly</c> in the survey minds that). The centre of an
/// arc between two corners follows from them and its radius, which were found along one edge: it is told at <see cref="Loosely"/> times
/// its ±, enough to say on which side it lies, and does not make the radius surer than it was seen.
/// </remarks>
public static class PhotoReadings
{
    public const string Instrument = "photograph";

    /// <param name="first">Index of the first reading in its sample.</param>
    public static ImmutableArray<Reading> Of(IEnumerable<NamedPick> picks, FrameScale scale, string frame, int first = 0)
    {
        var readings = ImmutableArray.CreateBuilder<Reading>();
        foreach (var pick in picks)
        {
            var within = pick.Spot.Spread.Ellipse.Major * (pick.BetweenCorners ? Loosely : 1);
            readings.Add(new Reading(first + readings.Count, ReadingKind.Picked, pick.Id, null, pick.Spot.At.X, Math.Max(Least, within))
            {
                ValueY = pick.Spot.At.Y,
                Frame = frame,
                Instrument = Instrument,
            });
            if (pick.Size is not { } size) continue;
            var kind = pick.Kind == FeatureKind.Arc ? ReadingKind.Radius : ReadingKind.Diameter;
            var std = Math.Sqrt(size.Std * size.Std + size.Value * size.Value * scale.Std * scale.Std);
            readings.Add(new Reading(first + readings.Count, kind, pick.Id, null, size.Value, Math.Max(Least, std)) { Instrument = Instrument });
        }
        return readings.ToImmutable();
    }

    /// <summary>A ninth of the weight: on the demonstration's rounds a radius then keeps its ± to within 7 %.</summary>
    const double Loosely = 3;

    /// <summary>mm; a reading must not weigh without bound.</summary>
    const double Least = 0.001;
}
