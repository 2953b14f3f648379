using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sections;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>
/// The sheet of a bead seen end-on, at mid-thickness: up from the panel by an arc, along a slope, over by another arc, across a flat top, and down the
/// same way (a joggle stops at the upper level). Exact. mm and radians.
/// </summary>
/// <param name="Edge">Radius where it leaves the panel.</param>
/// <param name="Slope">Straight part of a side.</param>
/// <param name="Crown">Radius at the top.</param>
/// <param name="Top">Straight part of the top.</param>
/// <param name="Turn">Steepest slope from the panel, over 0 to π/2.</param>
public sealed record Rib(double Edge, double Slope, double Crown, double Top, double Turn, bool OneSided)
{
    public double Depth => (Edge + Crown) * (1 - Math.Cos(Turn)) + Slope * Math.Sin(Turn);

    double Side => (Edge + Crown) * Math.Sin(Turn) + Slope * Math.Cos(Turn);

    /// <summary>Flat panel that it stands on, between the lines where the panel stops being flat.</summary>
    public double Chord => OneSided ? Side : 2 * Side + Top;

    /// <summary>Sheet that it takes.</summary>
    public double Developed => (OneSided ? 1 : 2) * ((Edge + Crown) * Turn + Slope) + Top;

    /// <summary>How much more sheet it takes than the flat it stands on: what the panel draws in when it is free.</summary>
    public double Extra => Developed - Chord;

    /// <summary>Mean stretch across if the panel gives nothing, as a share.</summary>
    public double Stretch => Developed / Chord - 1;

    /// <summary>From the bead as written; refuses radii, widths and depths that leave no room for each other.</summary>
    public static Parsed<Rib> Of(Bead bead, double thickness)
    {
        if (Wrong(bead, thickness) is { } refusal) return refusal;
        var (h, w, edge) = (bead.Depth, bead.Width, bead.EdgeRadius + thickness / 2);
        if (bead.Kind == BeadKind.Round)
        {
            // The two arcs' radii add up to that of one arc of twice the slope: (w²/4 + h²)/(2h).
            var sum = (w * w / 4 + h * h) / (2 * h);
            if (h > w / 2 + 1e-12) return Refusal.Of("bead, depth", $"{h:0.##} mm", $"a round bead {w:0.##} mm wide is at most {w / 2:0.##} mm deep");
            if (sum - edge < thickness / 2) return Refusal.Of("bead, edge radius", $"{bead.EdgeRadius:0.##} mm", $"it leaves nothing for the crown; at most {sum - thickness:0.##} mm");
            return new Rib(edge, 0, sum - edge, 0, Math.Asin(Math.Min(1, w / 2 / sum)), false);
        }
        var crown = bead.CrownRadius + thickness / 2;
        var run = bead.Kind switch { BeadKind.Vee => w / 2, BeadKind.Flat => (w - bead.Top) / 2, _ => w };
        var turn = Math.Atan2(h, run);
        var cut = Math.Tan(turn / 2);
        var slope = Math.Sqrt(run * run + h * h) - (edge + crown) * cut;
        if (slope < 0) return Refusal.Of("bead, radii", $"{bead.EdgeRadius:0.##} and {bead.CrownRadius:0.##} mm", $"together with the sheet's thickness they leave no slope; make them smaller, or the bead wider or deeper");
        var top = bead.Kind == BeadKind.Flat ? bead.Top - 2 * crown * cut : 0;
        if (top < 0) return Refusal.Of("bead, top", $"{bead.Top:0.##} mm", $"the corners take {2 * crown * cut:0.##} mm of it; make it wider or the crown radius smaller");
        return new Rib(edge, slope, crown, top, turn, bead.Kind == BeadKind.Joggle);
    }

    static Refusal? Wrong(Bead bead, double thickness)
    {
        foreach (var (name, value) in new[] { ("thickness", thickness), ("depth", bead.Depth), ("width", bead.Width), ("length", bead.Length) })
            if (!(value > 0 && double.IsFinite(value))) return Refusal.Of($"bead, {name}", $"{value}", "give a length in mm, more than 0");
        foreach (var (name, value) in new[] { ("edge radius", bead.EdgeRadius), ("crown radius", bead.CrownRadius), ("top", bead.Top), ("run-out", bead.RunOut) })
            if (!(value >= 0 && double.IsFinite(value))) return Refusal.Of($"bead, {name}", $"{value}", "give 0 or more, mm");
        if (bead.Kind == BeadKind.Flat && !(bead.Top < bead.Width)) return Refusal.Of("bead, top", $"{bead.Top:0.##} mm", $"it is narrower than the bead, {bead.Width:0.##} mm");
        if (2 * bead.RunOut > bead.Length) return Refusal.Of("bead, run-out", $"{bead.RunOut:0.##} mm", $"the two fit into the length of {bead.Length:0.##} mm");
        return null;
    }

    /// <summary>Middle line from flat to flat, from the left, its foot on the x axis.</summary>
    /// <param name="at">x of the middle of the chord.</param>
    public Chain Line(double at = 0)
    {
        var points = ImmutableArray.CreateBuilder<Corner>();
        var (s, c) = Math.SinCos(Turn);
        var bulge = Math.Tan(Turn / 4);
        var foot = new Vec2(at - Chord / 2, 0);
        var slope = foot + new Vec2(Edge * s, Edge * (1 - c));
        var shoulder = slope + new Vec2(Slope * c, Slope * s);
        var top = shoulder + new Vec2(Crown * s, Crown * (1 - c));
        points.Add(new(foot, bulge));
        Add(points, slope, 0);
        Add(points, shoulder, -bulge);
        if (OneSided) Add(points, top, 0);
        else
        {
            Vec2 Other(Vec2 p) => new(2 * at - p.X, p.Y);
            Add(points, top, 0);
            Add(points, Other(top), -bulge);
            Add(points, Other(shoulder), 0);
            Add(points, Other(slope), bulge);
            Add(points, Other(foot), 0);
        }
        return new(points.ToImmutable());
    }

    static void Add(ImmutableArray<Corner>.Builder points, Vec2 p, double bulge)
    {
        // A part without length is left out, and what follows starts where it would have.
        if (points[^1].At.DistanceTo(p) <= 1e-12) points[^1] = new(points[^1].At, bulge);
        else points.Add(new(p, bulge));
    }
}
