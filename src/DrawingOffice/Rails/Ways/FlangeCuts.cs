using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>A cut of a flange that meets a hole or comes too near it.</summary>
/// <param name="Gap">Between the two on the blank, mm; 0 where the cut runs through.</param>
readonly record struct CutHole(PlacedHole Hole, bool IsSlit, double Gap);

/// <summary>All cuts in a flange that is in one piece with the web, for the way chosen.</summary>
/// <param name="Vees">In rising order.</param>
/// <param name="Slits">Along the fold, mm.</param>
/// <param name="Met">Holes that no cut could be kept clear of.</param>
sealed record FlangeCuts(ImmutableArray<Notch> Vees, ImmutableArray<double> Slits, ImmutableArray<CutHole> Met)
{
    static readonly FlangeCuts None = new([], [], []);

    /// <summary>Openings are tested by chords this near, mm.</summary>
    const double ChordError = 0.02;

    /// <summary>Metal left between a hole and a weld, thicknesses (common practice).</summary>
    public const double Clear = 2;

    public static FlangeCuts Of(FoldEdge edge, EdgeStrain strain, Way way, ImmutableArray<PlacedHole> holes)
    {
        if (way.Kind == WayKind.Separate) return None;
        var clear = Clear * edge.Shape!.Thickness;
        var near = holes.Where(h => edge.Owns(h.Hole.Face)).Select(h => (Hole: h, Rim: h.OnBlank.Edge.Flatten(ChordError).ToArray())).ToList();
        var notches = way.Kind == WayKind.Notch ? NotchPlan.Of(edge, strain, (along, half) => near.All(h => Gap(edge, along, half, h.Rim) >= clear)) : null;
        ImmutableArray<Notch> vees = [.. (notches?.Vees ?? []).Concat(CreaseVees(edge)).OrderBy(v => v.Along)];
        ImmutableArray<double> slits = [.. (notches?.Slits ?? []).Concat(edge.Wedges.Where(w => w.Angle > 0).Select(w => w.Along))];
        var met = ImmutableArray.CreateBuilder<CutHole>();
        foreach (var (hole, rim) in near)
        {
            var (vee, slit) = (Least(vees.Select(v => Gap(edge, v.Along, v.Half, rim))), Least(slits.Select(s => Gap(edge, s, 0, rim))));
            if (Math.Min(vee, slit) < clear) met.Add(new(hole, slit < vee, Math.Min(vee, slit)));
        }
        return new(vees, slits, met.ToImmutable());
    }

    static double Least(IEnumerable<double> gaps) => gaps.DefaultIfEmpty(double.PositiveInfinity).Min();

    /// <summary>Inside a crease of the web the flange has metal too much: a V that closes as the web is creased.</summary>
    static IEnumerable<Notch> CreaseVees(FoldEdge edge) =>
        edge.Wedges.Where(w => w.IsCrease && w.Angle < 0).Select(w => new Notch(w.Along, -w.Angle * (edge.DevelopedAt(w.Along) - edge.Shape!.Allowance / 2) / 2));

    /// <summary>Between a V (or with no width a slit) and a rim, on the blank, mm.</summary>
    static double Gap(FoldEdge edge, double along, double half, Vec2[] rim)
    {
        Vec2 At(double a, double flat) => edge.Place(Math.Clamp(a, 0, edge.Line.Length)) is var p ? p.At + p.Out * flat : default;
        Vec2 Mouth(double a) => At(a, edge.DevelopedAt(a));
        Vec2[] vee = [Mouth(along - half), At(along, edge.Shape!.Allowance), Mouth(along + half)];
        if (Plane2.Contains(rim, vee[1]) || (half > 0 && rim.Any(p => Plane2.Contains(vee, p)))) return 0;
        var least = double.PositiveInfinity;
        for (int i = 0, j = rim.Length - 1; i < rim.Length; j = i++)
            for (var k = 0; k < 2; k++)
            {
                if (Plane2.Touch(rim[j], rim[i], vee[k], vee[k + 1], Crossings.Touch)) return 0;
                least = Math.Min(least, Math.Min(Plane2.Distance(rim[i], vee[k], vee[k + 1]), Math.Min(Plane2.Distance(vee[k], rim[j], rim[i]), Plane2.Distance(vee[k + 1], rim[j], rim[i]))));
            }
        return least;
    }
}
