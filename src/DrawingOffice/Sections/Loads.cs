using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>What a section carries at its worst place: shear upwards and sideways, N, and torque, N mm.</summary>
public sealed record Loads(double Up, double Sideways, double Torque);

/// <summary>What the joins of a section of several strips must carry.</summary>
public static class JoinNeeds
{
    /// <summary>Shear yield as a share of tensile yield (von Mises).</summary>
    const double InShear = 0.577;

    /// <summary>
    /// The flow q = V Q/I through each join for its loads, both shears and the torque added up. Without loads each join is asked to be as strong as
    /// the sheet: the shear, upwards or sideways, or the torque at which the most strained wall yields. Full working together of the strips is
    /// presumed; it holds only if every join carries its flow.
    /// </summary>
    public static Parsed<ImmutableArray<JoinNeed>> Of(Profile profile, Material material, Loads? loads = null)
    {
        if (profile.Joins.IsEmpty) return ImmutableArray<JoinNeed>.Empty;
        var thin = ThinWalls.Of(profile);
        if (thin.Refusal is { } refusal) return refusal;
        var yield = InShear * (material.Yield.Low ?? material.Yield.High ?? 0);
        var (up, side) = (thin.Value.Shear(new(0, 1)), thin.Value.Shear(new(1, 0)));
        var twist = thin.Value.Twist.Select(q => q / thin.Value.Torsion).ToArray();
        var needs = ImmutableArray.CreateBuilder<JoinNeed>();
        for (var w = 0; w < thin.Value.Net.Walls.Length; w++)
        {
            if (thin.Value.Net.Walls[w].Join is var j && j < 0) continue;
            var (u, s, t) = (Math.Abs(up.Start[w]), Math.Abs(side.Start[w]), Math.Abs(twist[w]));
            var flow = loads is { } l ? u * Math.Abs(l.Up) + s * Math.Abs(l.Sideways) + t * Math.Abs(l.Torque)
                : yield * Math.Max(Math.Max(u / up.Stress, s / side.Stress), t * thin.Value.TorsionModulus);
            needs.Add(Need(profile, profile.Joins[j], flow, material));
        }
        return needs.ToImmutable();
    }

    static JoinNeed Need(Profile profile, Join join, double flow, Material material)
    {
        if (join.Plug is not { } hole) return new(join, flow, null, null);
        var thickness = Math.Min(profile.Strips[profile.Place(join.First)].Thickness, profile.Strips[profile.Place(join.Second)].Thickness);
        var bears = PlugSeam.Bears(hole, thickness, material);
        return new(join, flow, bears, bears / flow);
    }
}
