namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// What readings off one photograph say more than once. Frames with a scale of their own are photographs; an arc whose centre and both ends
/// are picked in one was seen along one edge, and that the ends lie on the arc, and at its radius, was so from the start: it checks nothing.
/// </summary>
static class OnceOnly
{
    /// <summary>Readings more than the least, without what one edge of a photograph says again.</summary>
    public static int Redundancy(Solver solver, Fit fit)
    {
        if (solver.Sample.Frames.IsEmpty) return fit.Redundancy;
        var (sample, used) = (solver.Sample, Used(solver, fit));
        var again = 0;
        foreach (var arc in sample.Features)
            if (arc is { Kind: FeatureKind.Arc, From: { } from, To: { } to } && Frames(used, arc.Id).Intersect(Frames(used, from)).Intersect(Frames(used, to)).Any(f => IsPhotograph(sample, f)))
                again += used.Any(r => r.From == arc.Id && r.Kind is ReadingKind.Radius or ReadingKind.Diameter) ? 2 : 1;
        return Math.Max(0, fit.Redundancy - again);
    }

    /// <summary>
    /// Picks of one photograph owe part of their ± to the one camera and so agree better than they say: that alone is no reason to doubt
    /// what was stated.
    /// </summary>
    public static bool MayAgreeBetter(Solver solver, Fit fit) =>
        !solver.Sample.Frames.IsEmpty && Used(solver, fit).Any(r => r.Kind == ReadingKind.Picked && IsPhotograph(solver.Sample, r.Frame));

    static Reading[] Used(Solver solver, Fit fit) =>
        [.. Enumerable.Range(0, fit.Weights.Length).Where(r => fit.Weights[r] > 0).Select(solver.ReadingOf).Where(k => k >= 0).Distinct().Select(k => solver.Sample.Readings[k])];

    static IEnumerable<string> Frames(Reading[] used, string feature) => used.Where(r => r.Kind == ReadingKind.Picked && r.From == feature).Select(r => r.Frame);

    static bool IsPhotograph(Sample sample, string frame) => sample.Frames.Any(f => f.Name == frame);
}
