using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.DrawingOffice.Survey.Solid.Network;

namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>
/// From bench readings to the true shape of a part in space: heights over the surface plate in several set-ups, lengths, angles and
/// faces surveyed flat, all in one weighted least-squares adjustment with no feature and no set-up held.
/// </summary>
/// <remarks>
/// <para>Assumes: readings independent, errors normal with the stated standard uncertainty, the part rigid, faces flat, holes and
/// cylinders round, a pin without play. The stated uncertainties are believed; the global test says whether the readings agree.</para>
/// <para>± are first-order (linearised at the solution). Numerical error as in the flat survey, whose statistics are used: 1e-9 of a
/// distance and 1e-7 of a ± with ordinary instruments.</para>
/// </remarks>
public static class SolidAdjust
{
    /// <param name="sample">Checked first; <see cref="Maths.RefusedException"/> says what is wrong with it.</param>
    /// <param name="searchMirrors">Also look for second shapes that fit as well; costs many adjustments.</param>
    public static SolidPlan Solve(SolidSample sample, bool searchMirrors = true, CancellationToken stop = default)
    {
        SolidCheck.Verify(sample);
        var joined = FlatJoin.Of(sample);
        SolidCheck.Verify(joined);
        var solver = new SolidSolver(joined);
        var fit = solver.Settle(Settled(solver, stop), solver.Weights);
        var plan = Best(solver, fit, (f, t) => Snooping.Find(solver, f, t, stop), searchMirrors, stop);
        var aside = plan.Doubts.Alone;
        var kept = aside.IsEmpty ? plan : Best(solver, solver.Adjust(plan.Fit.X, solver.Without(aside.ToHashSet()), stop), (_, _) => plan.Doubts.OfTheRest, searchMirrors, stop);
        if (IsSpoilt(plan, kept)) return Mended(solver, plan, kept, searchMirrors, stop);
        return aside.IsEmpty ? plan : plan with { WithoutDoubtful = kept };
    }

    /// <summary>No rest, or so many accused that the verdict says nothing. Without two surplus readings no one of them can be told.</summary>
    static bool IsSpoilt(SolidPlan plan, SolidPlan kept) =>
        plan.Redundancy >= 2 && (!plan.Convergence.Converged || !kept.Convergence.Converged || 3 * plan.Doubts.Indices.Length > plan.Readings.Length);

    /// <summary>The plan with the one reading named that spoils it; as it was where there is none and the rest settles.</summary>
    static SolidPlan Mended(SolidSolver solver, SolidPlan plan, SolidPlan kept, bool searchMirrors, CancellationToken stop)
    {
        var (mends, fit, worst) = LeaveOneOut.Find(solver, plan.Fit, stop);
        if (mends.IsEmpty && (kept.Convergence.Converged || worst.IsEmpty)) return ReferenceEquals(kept, plan) ? plan : plan with { WithoutDoubtful = kept };
        var doubts = LeaveOneOut.Words(mends, worst);
        var named = plan with { Doubts = doubts, Readings = Findings.Results(solver, plan.Fit, Testing.Of(solver, plan.Fit), doubts, plan.Readings.Length) };
        if (mends.Length != 1 || fit is null) return named;
        return named with { WithoutDoubtful = Best(solver, fit, (_, _) => doubts with { Indices = [] }, searchMirrors, stop) };
    }

    static SolidPlan Best(SolidSolver solver, Fit first, Func<Fit, Testing, Doubts> doubts, bool searchMirrors, CancellationToken stop) => solver.Best(first, fit =>
    {
        var tests = Testing.Of(solver, fit);
        return SolidPlanMaker.Make(solver, fit, tests, doubts(fit, tests), searchMirrors, stop);
    }, plan => plan.BetterStart, stop);

    static Maths.LeastSquares.Minimum Settled(SolidSolver solver, CancellationToken stop) =>
        SolidRepair.Improve(solver, SolidStart.Approach(solver, SolidStart.From(solver, stop), stop), stop);
}
