using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey;

/// <summary>
/// From readings to the true plan: weighted nonlinear least squares with every feature unknown and none held, so that no
/// result between features leans on a datum.
/// </summary>
/// <remarks>
/// <para>Readings on worn or rusted features bound what was made from one side; the plan is then of what was made (Network.Wear).
/// Of repaired features it is of what is there now.</para>
/// <para>Assumes: readings independent, errors normal with the stated standard uncertainty, the part flat and rigid. The stated
/// uncertainties are believed (variance factor 1, not rescaled by the fit); the global test says whether the readings agree.</para>
/// <para>± are first-order (linearised at the solution). Numerical error of ±: about 1e-9 relative, 4e-7 with exact
/// conditions, at worst 6e-5 where micrometer, tape and exact conditions meet in one survey; distances settle to rounding. Cost grows about with the readings while each ties neighbours.</para>
/// </remarks>
public static class Adjust
{
    /// <param name="sample">Checked first; <see cref="RefusedException"/> says what is wrong with it.</param>
    /// <param name="searchMirrors">Also look for second shapes that fit as well; costs several adjustments.</param>
    public static Plan Solve(Sample sample, bool searchMirrors = true, CancellationToken stop = default)
    {
        SampleCheck.Verify(sample);
        var solver = new Solver(sample);
        var settled = Settled(solver, stop);
        var fit = solver.HasWear ? solver.Adjust(settled.X, solver.Weights, stop) : solver.Settle(settled, solver.Weights);
        var plan = Best(solver, fit, (f, t) => Snooping.Find(solver, f, t, stop), searchMirrors, stop);
        var aside = plan.Doubts.Alone;
        if (aside.IsEmpty) return plan;

        var kept = solver.Adjust(plan.Fit.X, solver.Without(aside.ToHashSet()), stop);
        return plan with { WithoutDoubtful = Best(solver, kept, (_, _) => plan.Doubts.OfTheRest, searchMirrors, stop) };
    }

    static Plan Best(Solver solver, Fit first, Func<Fit, Testing, Doubts> doubts, bool searchMirrors, CancellationToken stop) => solver.Best(first, fit =>
    {
        var tests = Testing.Of(solver, fit);
        return PlanMaker.Make(solver, fit, tests, doubts(fit, tests), searchMirrors, stop);
    }, plan => plan.BetterStart, stop);

    /// <summary>Coarse first.</summary>
    static Minimum Settled(Solver solver, CancellationToken stop)
    {
        var coarse = solver.Coarse();
        var starts = Start.From(solver, stop);
        var best = starts.Count == 1 && coarse.SequenceEqual(solver.Weights)
            ? starts[0]
            : starts.Select(x => solver.Minimise(x, coarse, stop)).MinBy(m => m.SumOfSquares)!.X;
        return Repair.Improve(solver, best, solver.Weights, stop);
    }
}
