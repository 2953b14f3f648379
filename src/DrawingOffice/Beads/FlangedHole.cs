using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>A hole with its edge turned up square all round, as it is wanted, mm.</summary>
/// <param name="At">Middle, in the finished panel.</param>
/// <param name="Inside">Diameter in the finished flange.</param>
/// <param name="Height">From the panel's face on the punch side to the flange's edge; at least thickness and radius.</param>
/// <param name="Radius">On the hollow side of the bend, which is the die's.</param>
public sealed record FlangedHole(string Name, Vec2 At, double Inside, double Height, double Radius);

/// <summary>How a flanged hole is made. Diameters, mm.</summary>
/// <param name="ByLength">Hole to cut when the line at mid-thickness keeps its length: D − 2 (H − 0.43 R − 0.72 T) with D at mid-thickness, exact.</param>
/// <param name="ByVolume">Hole to cut when the flange keeps the sheet's thickness and the metal its volume (Pappus).</param>
/// <param name="Stretch">Of the edge, by length, as a share: what the metal must bear.</param>
/// <param name="EdgeThickness">Left at the edge by then, mm: T √(d/D), as in simple tension.</param>
/// <param name="Punch">Diameter of the punch.</param>
/// <param name="Die">Opening of the die: flange outside and a twentieth of the thickness of clearance each side (common practice).</param>
public sealed record HoleTooling(FlangedHole Wanted, double ByLength, double ByVolume, double Stretch, double EdgeThickness, double Punch, double Die)
{
    /// <summary>Flanges higher than this many thicknesses tend to split (Fundamentals of Tool Design, 6th edition, hole flanging).</summary>
    public const double SplitsOver = 2.5;

    /// <summary>Least metal between two flanges, in thicknesses (common practice for extruded holes).</summary>
    public const double Apart = 6;

    const double Clearance = 0.05;

    public static Parsed<HoleTooling> Of(FlangedHole hole, double thickness)
    {
        var (t, r) = (thickness, hole.Radius);
        var name = $"flanged hole {hole.Name}";
        if (!(t > 0)) return Refusal.Of("thickness", $"{t}", "give a thickness above 0");
        if (!(hole.Inside > 0 && double.IsFinite(hole.Inside))) return Refusal.Of($"{name}, inside diameter", $"{hole.Inside}", "give a diameter above 0");
        if (!(r >= 0 && double.IsFinite(r))) return Refusal.Of($"{name}, radius", $"{r}", "give 0 or more, mm");
        var wall = hole.Height - t - r;
        if (!(wall >= 0 && double.IsFinite(wall))) return Refusal.Of($"{name}, height", $"{hole.Height:0.##} mm", $"thickness and radius alone take {t + r:0.##} mm");
        var middle = hole.Inside + t;
        var centre = middle / 2 + r + t / 2;
        var byLength = 2 * (centre - Math.PI / 2 * (r + t / 2) - wall);
        if (byLength <= 0) return Refusal.Of($"{name}, height", $"{hole.Height:0.##} mm", $"no hole is left to flange; the flange can be at most {hole.Height + byLength / 2:0.##} mm high and must be far lower to hold together");
        var stays = centre * centre - Volume(hole, t) / (Math.PI * t);
        return new HoleTooling(hole, byLength, stays > 0 ? 2 * Math.Sqrt(stays) : 0, middle / byLength - 1, t * Math.Sqrt(byLength / middle), hole.Inside, hole.Inside + 2 * t * (1 + Clearance));
    }

    /// <summary>Metal in flange and bend as drawn, full thickness, mm³: by Pappus, exact.</summary>
    public static double Volume(FlangedHole hole, double thickness)
    {
        var (t, r) = (thickness, hole.Radius);
        var (inner, outer) = (r, r + t);
        var area = Math.PI / 4 * (outer * outer - inner * inner);
        // The quarter ring's centroid lies 4/3π (R³ − r³)/(R² − r²) from its corner, which stands outside the flange.
        var arm = 4 / (3 * Math.PI) * (outer * outer * outer - inner * inner * inner) / (outer * outer - inner * inner);
        return 2 * Math.PI * (hole.Inside / 2 + t + r - arm) * area + Math.PI * (hole.Inside + t) * t * (hole.Height - t - r);
    }
}
