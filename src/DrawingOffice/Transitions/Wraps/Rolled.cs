using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A tube with shaped ends as a sheet to be rolled, seen from the inside: angles run to the left.</summary>
public static class Rolled
{
    /// <param name="layer">Radius of the layer that keeps its length, mm.</param>
    /// <param name="bottom">Height of the lower edge over an angle, mm.</param>
    /// <param name="top">Height of the upper edge.</param>
    /// <param name="stations">Lines across, evenly round.</param>
    public static Piece Sheet(string name, Asked asked, double layer, Func<double, double> bottom, Func<double, double> top, double seam, int stations)
    {
        ImmutableArray<Vec2> Edge(Func<double, double> height) => Follow.Curve(t => new(-layer * t, height(seam + t)), 0, Math.Tau, stations, asked.Error);
        var (low, high) = (Edge(bottom), Edge(top));
        var outline = Laid.Around(low, high);
        var lines = ImmutableArray.CreateBuilder<Witness>();
        for (var k = 1; k < stations; k++)
        {
            var t = Math.Tau * k / stations;
            lines.Add(new($"{k}", [new(-layer * t, bottom(seam + t)), new(-layer * t, top(seam + t))]));
        }
        if (asked.Seam.Lap > 0)
        {
            lines.Add(new("lap to here", [low[^1], high[^1]]));
            outline = new([.. outline.Corners, new(high[^1] - new Vec2(asked.Seam.Lap, 0)), new(low[^1] - new Vec2(asked.Seam.Lap, 0))]);
        }
        return new(name, asked.Thickness, outline) { Witnesses = lines.ToImmutable(), Notes = ["seen from the inside; roll along the lines"] };
    }
}
