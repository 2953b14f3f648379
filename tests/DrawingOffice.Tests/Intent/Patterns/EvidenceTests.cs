using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Offers;
using WitnessMark.DrawingOffice.Intent.Patterns.Search;
using WitnessMark.DrawingOffice.Intent.Patterns.Weights;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent.Patterns;

/// <summary>The arithmetic of evidence against dense matrices and against the survey's own exact conditions.</summary>
public class EvidenceTests
{
    static readonly Making NextToExact = new("exactly", 1e-6, 1e-6, 1e-6, 0, 0, 1e-6, 0);

    static (Plan Plan, Shape Shape) Plate(ulong seed)
    {
        var plan = Adjust.Solve(PlateShop.Patterned(seed, 8).Sample, searchMirrors: false).Believed;
        return (plan, new Shape(plan));
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "log density of the joint Gaussian by dense Cholesky, MathNet.Numerics")]
    public void Evidence_of_a_set_is_the_product_of_what_each_adds()
    {
        var (plan, shape) = Plate(9);
        var belief = Belief.Of(shape.Start, StartSpread.Of(plan, shape, Making.ByHand));
        var slopes = Directions.Of(shape).Where(h => h.Nominal is null).Take(3).Concat(Sizes.Alike(shape).Take(2)).SelectMany(h => h.Parts).Select(t => Slope.Of(t, shape, belief)).ToImmutableArray();
        var together = Weigher.Of(slopes, belief, belief.X);

        var (step, chi, log) = (belief.Copy(), 0.0, 0.0);
        foreach (var s in slopes)
        {
            var one = Weigher.Of([s], step, belief.X);
            (chi, log) = (chi + one.ChiSquare, log + one.Log);
            Greedy.Hold(step, [s], belief.X);
        }
        Assert.Equal(slopes.Length, together.Freedom);
        Assert.Equal(together.ChiSquare, chi, 6);
        Assert.Equal(together.Log, log, 6);

        var cov = Matrix<double>.Build.Dense(slopes.Length, slopes.Length, (i, k) => belief.Now.Covariance(slopes[i].Columns, slopes[i].Rates, slopes[k].Columns, slopes[k].Rates));
        var h = Vector<double>.Build.Dense([.. slopes.Select(s => s.Value)]);
        var dense = slopes.Sum(s => s.Tie.LogRange) - 0.5 * (slopes.Length * Math.Log(2 * Math.PI) + Math.Log(cov.Determinant()) + h * cov.Inverse() * h);
        Assert.Equal(dense, together.Log, 6);
    }

    [Fact]
    [Truth(Grade.Property, "a condition that follows from others adds nothing, by construction of the conditional Gaussian")]
    public void What_follows_is_implied_and_counted_once()
    {
        var (plan, shape) = Plate(9);
        var belief = Belief.Of(shape.Start, StartSpread.Of(plan, shape, Making.ByHand));
        int[] same = [.. shape.Sized.Take(3)];
        Slope Equal(int a, int b) => Slope.Of(Sizes.Equal(shape, a, b, 0), shape, belief);
        var three = Weigher.Of([Equal(same[0], same[1]), Equal(same[1], same[2]), Equal(same[0], same[2])], belief, belief.X);
        Assert.Equal(2, three.Freedom);
        Greedy.Hold(belief, [Equal(same[0], same[1]), Equal(same[1], same[2])], shape.Start);
        Assert.True(Weigher.Of([Slope.Of(Sizes.Equal(shape, same[0], same[2], 0), shape, belief)], belief, belief.X).Implied);
    }

    /// <summary>With next to no making spread the conditioned adjustment is the survey with the same conditions typed in.</summary>
    [Fact]
    [Truth(Grade.SecondImplementation, "Adjust.Solve with Parallel and Square as exact readings: nonlinear least squares over the readings themselves")]
    public void Conditions_on_the_plan_are_conditions_in_the_survey()
    {
        var sample = PlateShop.Patterned(9, 8).Sample;
        var plan = Adjust.Solve(sample, searchMirrors: false).Believed;
        var shape = new Shape(plan);
        int E(string id) => shape.Find(id)!.Value;
        ImmutableArray<Tie> ties = [Directions.Apart(shape, E("E1"), E("E3"), 0, 0), Directions.Apart(shape, E("E1"), E("E2"), Math.PI / 2, 0)];
        var settled = Settle.On(shape, StartSpread.Of(plan, shape, NextToExact), ties);
        Assert.InRange(settled.Left, 0, 1e-6);
        Assert.Equal(2, settled.Rank);

        var kept = sample.Readings.Where(r => plan.Readings[r.Index].Used).ToList();
        ImmutableArray<Reading> readings =
        [
            .. kept.Select((r, i) => r with { Index = i }),
            new(kept.Count, ReadingKind.Parallel, "E1", "E3", 0, 0), new(kept.Count + 1, ReadingKind.Square, "E1", "E2", 0, 0),
        ];
        var direct = Adjust.Solve(sample with { Readings = readings }, searchMirrors: false);
        var places = shape.Places;
        foreach (var a in places)
            foreach (var b in places.Where(b => b > a))
                Assert.Equal(direct.Of(shape.Id(a)).At.DistanceTo(direct.Of(shape.Id(b)).At), shape.At(a, settled.Belief.X).DistanceTo(shape.At(b, settled.Belief.X)), 0.002);
    }

    /// <summary>Central differences against a step ten times as long: what the slope would be at second order is not there.</summary>
    [Fact]
    [Truth(Grade.Property, "a slope foretells a small move to second order")]
    public void Slopes_foretell_small_moves()
    {
        var (plan, shape) = Plate(9);
        var belief = Belief.Of(shape.Start, StartSpread.Of(plan, shape, Making.ByHand));
        var chance = new Chance(5);
        var moved = shape.Start.Select(x => x + 0.01 * chance.Normal()).ToArray();
        var frame = Frames.Of(shape, shape.Start)[0];
        foreach (var h in Directions.Of(shape).Concat(Rows.InLine(frame, shape.Start)).Concat(Sizes.Alike(shape)))
            foreach (var tie in h.Parts)
                Assert.Equal(tie.Of(moved), Slope.Of(tie, shape, belief).At(shape.Start, moved), 1e-4);
    }
}
