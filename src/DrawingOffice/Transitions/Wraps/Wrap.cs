using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>
/// The cut end of a tube laid flat: x round the tube from the seam, y along it. As a paper it is seen from outside, its straight edge goes on a
/// line square round the tube and its middle layer lies half its thickness outside the tube.
/// </summary>
public static class Wrap
{
    /// <summary>Straight paper kept beyond the cut, mm.</summary>
    public const double Margin = 20;

    /// <summary>A template of paper.</summary>
    /// <param name="outside">Radius of the tube that it goes round, mm.</param>
    /// <param name="height">Of the cut over an angle, mm.</param>
    /// <param name="top">Height of the straight edge, mm.</param>
    /// <param name="seam">Angle of the seam, radians.</param>
    /// <param name="error">Greatest distance of the drawn curve from the true one, mm.</param>
    public static Piece Template(string name, double outside, Func<double, double> height, double top, double seam, Wrapping wrapping, double error)
    {
        var layer = outside + wrapping.Paper / 2;
        var girth = Math.Tau * layer;
        var curve = Curve(layer, height, seam, wrapping.Stations, top, error);
        var stations = ImmutableArray.CreateBuilder<Witness>();
        for (var k = 0; k < wrapping.Stations; k++)
        {
            var x = girth * k / wrapping.Stations;
            stations.Add(new($"{k}", [new(x, height(seam + x / layer) - top), new(x, 0)]));
        }
        stations.Add(new("lay this end here", [new(girth, curve[^1].Y), new(girth, 0)]));
        var throat = Turn(-seam) * layer;
        stations.Add(new("throat line along the tube", [new(throat, height(0) - top), new(throat, 0)]));
        // The tab goes on as the curve begins again, so that it lies under without hiding it.
        return new(name, wrapping.Paper,
            Loop.Of([.. curve, new(girth + wrapping.Tab, curve[^1].Y), new(girth + wrapping.Tab, 0), new(0, 0)]))
        {
            Witnesses = stations.ToImmutable(),
            Notes = ["paper, printed side out, straight edge on a line square round the tube, cut end downwards"],
        };
    }

    /// <summary>The bottom edge from seam to seam, hung from y = 0 at the straight edge.</summary>
    public static ImmutableArray<Vec2> Curve(double layer, Func<double, double> height, double seam, int stations, double top, double error) =>
        Follow.Curve(t => new(layer * t, height(seam + t) - top), 0, Math.Tau, stations, error);

    static double Turn(double angle) => angle - Math.Tau * Math.Floor(angle / Math.Tau);

    /// <summary>The ordinates to set out by hand, angle and height under the straight edge.</summary>
    public static Listing Ordinates(string title, double layer, Func<double, double> height, double top, double seam, int stations) => new(title,
        ["station", "round from the seam", "down from the straight edge"],
        [.. Enumerable.Range(0, stations).Select(k => ImmutableArray.Create($"{k}", Say.Mm(Math.Tau * layer * k / stations), Say.Mm(top - height(seam + Math.Tau * k / stations))))]);
}
