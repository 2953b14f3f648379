namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>Why a group of features is loose, in a sentence.</summary>
static class LooseWords
{
    public static string Of(Solver solver, Fit fit, double[][] motions, int[] members)
    {
        var layout = solver.Layout;
        if (members.Length > 1) return Group(layout, motions.Length, members);
        var feature = members[0];
        var moves = layout.HasPlace(feature) && motions.Any(m => layout.Place(feature, m).Length > 1e-4);
        if (!moves) return layout.HasPlace(feature) ? $"nothing read gives the size of {layout.Features[feature].Id}" : $"too few readings tie {layout.Features[feature].Id}";
        return Single(solver, fit, feature, motions.Length);
    }

    static string Group(Layout layout, int freedoms, int[] members)
    {
        var names = string.Join(", ", members.Select(f => layout.Features[f].Id));
        return $"{names} move together against the rest in {Count(freedoms)}; {Missing(freedoms)}";
    }

    static string Single(Solver solver, Fit fit, int feature, int freedoms)
    {
        var layout = solver.Layout;
        var ties = Enumerable.Range(0, fit.Weights.Length)
            .Where(r => fit.Weights[r] > 0 && solver.Places(r).Contains(feature) && solver.Places(r).Count() > 1)
            .Select(r => solver.Equations.Rows[r]).ToList();
        var id = layout.Features[feature].Id;
        if (ties.Count == 0) return $"no reading ties {id} to anything; {Missing(freedoms)}";
        var indices = string.Join(", ", ties.Select(o => o.Reading).Where(i => i >= 0).Distinct());
        var others = ties.SelectMany(o => layout.PlacesIn(o)).Where(f => f != feature).Distinct().ToList();
        if (others.Count == 1) return $"tied to {layout.Features[others[0]].Id} alone (index {indices}): {id} can swing on a circle about it; {Missing(freedoms)}";
        return $"the readings that tie {id} (index {indices}) leave it {Count(freedoms)}; {Missing(freedoms)}";
    }

    public static string Count(int freedoms) => freedoms == 1 ? "one free motion" : $"{freedoms} free motions";

    public static string Missing(int freedoms) => freedoms == 1 ? "one more reading is the least that holds it" : $"{freedoms} more readings are the least that hold it";
}
