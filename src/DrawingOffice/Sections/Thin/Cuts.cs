using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>Where a join meets a strip's middle line: side and share along it.</summary>
readonly record struct Cut(int Join, int Strip, int Side, double Share)
{
    public Vec2 At(Profile profile) => profile.Strips[Strip].Middle[Side].At(Share);
}

/// <summary>The places of all joins on all strips.</summary>
static class Cuts
{
    /// <summary>A join may bridge the two half sheets and this much air, mm (a pulled-in gap; common practice).</summary>
    const double Gap = 1;

    public static Parsed<ImmutableArray<Cut>> Of(Profile profile)
    {
        var cuts = ImmutableArray.CreateBuilder<Cut>();
        for (var j = 0; j < profile.Joins.Length; j++)
        {
            var join = profile.Joins[j];
            foreach (var name in new[] { join.First, join.Second })
                if (profile.Place(name) < 0) return Refusal.Of($"join {j + 1}", name, $"name two of the strips {string.Join(", ", profile.Strips.Select(s => s.Name))}");
            if (join.First == join.Second) return Refusal.Of($"join {j + 1}", join.First, "name two different strips");
            var (a, b) = (On(profile, j, join.First, join.At), On(profile, j, join.Second, join.At));
            var thinner = Math.Min(profile.Strips[a.Strip].Thickness, profile.Strips[b.Strip].Thickness);
            if (join.Plug <= thinner) return Refusal.Of($"join {j + 1}, plug_hole", $"{join.Plug:0.##} mm", $"a hole no wider than the sheet of {thinner:0.##} mm cannot be filled; 6 to 10 mm are usual");
            var far = a.At(profile).DistanceTo(b.At(profile));
            var near = (profile.Strips[a.Strip].Thickness + profile.Strips[b.Strip].Thickness) / 2 + Gap;
            if (far > near)
                return Refusal.Of($"join {j + 1}", $"{join.First} and {join.Second} {far:0.##} mm apart there", $"name a place where their middles come within {near:0.##} mm, so that the sheets touch");
            if (join.Plug is { } hole && PlugRoom.Of(profile, a, b) is var room && hole > room + Profile.Same)
                return Refusal.Of($"join {j + 1}, plug_hole", $"{hole:0.##} mm", $"{join.First} and {join.Second} have only {room:0.##} mm of flat on each other there; give a smaller hole, or weld the seam through");
            foreach (var other in Enumerable.Range(0, j).Where(o => Same(profile.Joins[o], join)))
                if (cuts[2 * other].At(profile).DistanceTo(a.At(profile)) <= Profile.Same || cuts[2 * other + 1].At(profile).DistanceTo(b.At(profile)) <= Profile.Same)
                    return Refusal.Of($"join {j + 1}", $"{join.First} and {join.Second}", $"join {other + 1} holds them at the same place already");
            cuts.Add(a);
            cuts.Add(b);
        }
        return cuts.ToImmutable();
    }

    static bool Same(Join a, Join b) => a.First == b.First && a.Second == b.Second;

    static Cut On(Profile profile, int join, string name, Vec2 at)
    {
        var place = profile.Place(name);
        var middle = profile.Strips[place].Middle;
        return Enumerable.Range(0, middle.Count).Select(i => new Cut(join, place, i, middle[i].Nearest(at))).MinBy(c => c.At(profile).DistanceTo(at));
    }
}
