using WitnessMark.DrawingOffice.Survey.Network;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>Why a group of features is loose in space, in a sentence.</summary>
static class SolidLooseWords
{
    public static string Of(SolidSolver solver, Fit fit, double[][] motions, int[] members)
    {
        var layout = solver.Layout;
        var missing = LooseWords.Missing(motions.Length);
        var count = LooseWords.Count(motions.Length);
        int[] features = [.. members.Where(f => f < layout.Features.Length)];
        if (features.Length == 0)
        {
            var (plane, name) = layout.Frames[members[0] - layout.Features.Length];
            return $"too few places were read on face {layout.Features[plane].Id}{(name.Length > 0 ? $" in setting {name}" : "")} to say how it lay then: two places tell it, a third begins to check";
        }
        var names = string.Join(", ", features.Select(f => layout.Features[f].Id));
        if (features.Length > 1) return $"{names} move together against the rest in {count}; {missing}";
        return Single(solver, fit, motions, features[0]) ?? $"the readings that tie {names}{Numbers(solver, fit, features[0])} leave it {count}; {missing}";
    }

    static string? Single(SolidSolver solver, Fit fit, double[][] motions, int feature)
    {
        var layout = solver.Layout;
        var id = layout.Features[feature].Id;
        var ties = Ties(solver, fit, feature);
        if (layout.Kind(feature) == SolidKind.SetUp)
        {
            return $"{Plural(ties.Count, "height was", "heights were")} taken in set-up {id}: three, of places not in line, tell how the part stood; a fourth begins to check";
        }
        bool Only(Func<int, bool> mine) => motions.All(m => Enumerable.Range(layout.First(feature), layout.Unknowns(feature)).All(u => mine(u) || Math.Abs(m[u]) < 1e-4));
        if (Only(u => u == layout.SizeOf(feature))) return $"nothing read gives the diameter of {id}";
        if (layout.Kind(feature) == SolidKind.Hole && layout.Turning[feature] && Only(u => u >= layout.DirectionAt(feature))) return $"too few readings give the direction of the axis of {id}";
        var others = ties.SelectMany(r => solver.Named(r)).Where(f => f != feature).Distinct().ToList();
        if (others.Count == 0) return $"no reading ties {id} to anything; {LooseWords.Missing(motions.Length)}";
        if (layout.Kind(feature) == SolidKind.Plane && ties.All(r => solver.Equations.Rows[r].Form == Form.Over))
            return $"a plane needs three places not in line; {id} has {(others.Count > 2 ? "its places in one line" : others.Count == 2 ? "two" : "one")} ({string.Join(", ", others.Select(f => layout.Features[f].Id))}) and can still turn about {(others.Count == 1 ? "it" : "the line through them")}";
        return null;
    }

    static List<int> Ties(SolidSolver solver, Fit fit, int feature) =>
        [.. Enumerable.Range(0, fit.Weights.Length).Where(r => fit.Weights[r] > 0 && solver.Equations.Rows[r].Form != Form.Foot && solver.Named(r).Contains(feature) && solver.Named(r).Length > 1)];

    static string Numbers(SolidSolver solver, Fit fit, int feature)
    {
        var numbers = Ties(solver, fit, feature).Select(solver.ReadingOf).Where(i => i >= 0).Distinct().Select(i => i + 1).ToList();
        return numbers.Count == 0 ? "" : $" ({(numbers.Count == 1 ? "reading" : "readings")} {string.Join(", ", numbers)})";
    }

    static string Plural(int count, string one, string many) => count switch { 0 => $"no {one}", 1 => $"one {one}", 2 => $"two {many}", _ => $"{count} {many}" };
}
