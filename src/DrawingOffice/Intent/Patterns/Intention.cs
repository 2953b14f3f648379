using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Offers;
using WitnessMark.DrawingOffice.Intent.Patterns.Search;
using WitnessMark.DrawingOffice.Intent.Patterns.Weights;
using WitnessMark.DrawingOffice.Intent.Patterns.Words;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns;

/// <summary>What the draughtsman meant by a measured plan: the set of patterns and round values that explains it best.</summary>
/// <remarks>
/// <para>The meant shape m is unknown; the made part strays from it feature by feature (<see cref="Making"/>), and the readings
/// from the part. Linearised, m is Gaussian about the plan with the covariance of readings and making together. A hypothesis
/// is a set of equations h(m) = 0; its evidence is the density N(h; 0, H P Hᵀ) against an even spread, and taking it conditions
/// m exactly, so that the evidence of a set is the product of what each adds to those before it, and what follows from them
/// adds nothing.</para>
/// <para>Assumes: making errors independent and normal with the stated spread; what strays further (wear, damage, a bent
/// corner) fails its test and is left as measured. Odds are right as far as the spread of making and the shares of
/// <see cref="Practice"/> are.</para>
/// </remarks>
public static class Intention
{
    /// <summary>Unknowns past which the covariance is too large to search in seconds: about 150 holes.</summary>
    const int MostUnknowns = 600;

    /// <param name="plan">Its <see cref="Plan.Believed"/> form is read; misread readings are already set aside there.</param>
    /// <exception cref="RefusedException">The plan has not settled, is too large to search, or a key names what is not there.</exception>
    public static IntentPlan Find(Plan plan, IntentWish? wish = null, IProgress<IntentProgress>? progress = null, CancellationToken stop = default)
    {
        var (asked, believed) = (wish ?? new IntentWish(), plan.Believed);
        asked.Prior.Checked();
        var making = asked.Making.Checked();
        if (!believed.Convergence.Converged) throw new RefusedException(Refusal.Of("plan", "not settled", $"its readings must agree before anything is read into them: {believed.Convergence.Words}"));
        if (believed.Unknowns > MostUnknowns) throw new RefusedException(Refusal.Of("plan", $"{believed.Unknowns} unknowns", $"at most {MostUnknowns} can be searched; take a part of the features at a time"));

        var shape = new Shape(believed);
        var spread = StartSpread.Of(believed, shape, making);
        var keys = new KeyReader(shape, making);
        ImmutableArray<Hypothesis> forced = [.. asked.Forced.Select(keys.Whole)];
        var refused = asked.Refused.SelectMany(k => keys.Each(k)).ToImmutableArray();
        var barred = new Barred(shape, refused);
        var start = Start(shape, spread, believed, forced);

        var way = Explain.Of(start, barred, asked, progress, stop);
        var trimmed = Review.Trim(way, spread, stop);
        var (course, rivals) = Review.Compare(way, trimmed, spread, h => Neighbours.Of(h, shape, way.Origin, asked.Prior, making), barred, stop);
        var settled = Settle.On(shape, spread, course.Conditions, course.Belief.X);
        return new Telling(way with { Course = course with { Belief = settled.Belief } }, believed, making, rivals, refused, settled).Told();
    }

    static Course Start(Shape shape, Spread spread, Plan plan, ImmutableArray<Hypothesis> forced)
    {
        var given = Given.Of(shape, plan.Solver.Sample);
        var taken = forced.Select(h => new Taken(h, default, 0, null, Forced: true));
        var course = Course.Of(shape, spread, given, taken, _ => 0);
        return course with { Belief = Settle.On(shape, spread, course.Conditions).Belief };
    }
}
