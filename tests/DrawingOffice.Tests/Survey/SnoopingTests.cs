using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>How often the verdict on gross errors is right, counted on plates with known errors. Figures are quoted in docs/guide/survey.md.</summary>
[Truth(Grade.Property, "simulation with known truth")]
public class SnoopingTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(6, 3, 400)]
    [InlineData(12, 4, 300)]
    [InlineData(40, 4, 150)]
    public void A_clean_survey_is_accused_in_five_of_a_hundred_cases_at_most(int points, int ties, int trials)
    {
        var accused = 0;
        for (var t = 0; t < trials; t++)
            if (!Adjust.Solve(Simulated.Plate(points, ties, new Chance((ulong)(1000 + t))), searchMirrors: false).Doubts.Indices.IsEmpty) accused++;
        output.WriteLine($"{points} points: false alarms {accused} of {trials}");
        // Binomial, 5 %, upper limit passed by chance once in a thousand.
        Assert.True(accused <= 0.05 * trials + 3.1 * Math.Sqrt(0.05 * 0.95 * trials), $"{accused} of {trials}");
    }

    [Theory]
    [InlineData(6, 3, 200)]
    [InlineData(12, 4, 150)]
    [InlineData(40, 4, 80)]
    public void An_error_of_the_stated_smallest_detectable_size_is_found_with_the_stated_power(int points, int ties, int trials)
    {
        var (found, hit) = (0, 0);
        for (var t = 0; t < trials; t++)
        {
            var chance = new Chance((ulong)(5000 + t));
            var sample = Simulated.Plate(points, ties, chance);
            var clean = Adjust.Solve(sample, searchMirrors: false);
            var testable = clean.Readings.Where(r => r.SmallestDetectable is not null && r.RedundancyNumber > 0.05).ToList();
            var target = testable[chance.Below(testable.Count)];
            var plan = Adjust.Solve(Simulated.WithError(sample, target.Index, (chance.Below(2) == 0 ? 1 : -1) * target.SmallestDetectable!.Value), searchMirrors: false);
            if (!plan.Doubts.Indices.IsEmpty) found++;
            if (plan.Doubts.Indices.Contains(target.Index)) hit++;
        }
        output.WriteLine($"{points} points: an error noticed {found}, the right reading named {hit} of {trials}");
        // Power 0.8 is that of the reading's own test; binomial lower limit, once in a thousand.
        Assert.True(found >= 0.8 * trials - 3.1 * Math.Sqrt(0.8 * 0.2 * trials), $"noticed {found} of {trials}");
    }

    [Theory, InlineData(2), InlineData(3)]
    public void Several_large_errors_are_named_without_good_readings_among_them(int errors)
    {
        const int trials = 60;
        var right = 0;
        for (var t = 0; t < trials; t++)
        {
            var chance = new Chance((ulong)(9000 + t));
            var sample = Simulated.Plate(16, 5, chance);
            var clean = Adjust.Solve(sample, searchMirrors: false);
            var planted = new SortedSet<int>();
            while (planted.Count < errors)
            {
                var r = clean.Readings[chance.Below(clean.Readings.Length)];
                if (r.RedundancyNumber > 0.3 && planted.Add(r.Index)) sample = Simulated.WithError(sample, r.Index, (chance.Below(2) == 0 ? 1 : -1) * chance.Uniform(0.5, 5));
            }
            if (Adjust.Solve(sample, searchMirrors: false).Doubts.Indices.SequenceEqual(planted)) right++;
        }
        output.WriteLine($"{errors} errors: exactly named in {right} of {trials}");
        Assert.True(right >= 0.85 * trials, $"{right} of {trials}");
    }

    [Fact]
    public void Two_readings_of_one_thing_that_disagree_are_reported_together()
    {
        var plan = Adjust.Solve(Triangle(30.0, 30.6));
        Assert.Equal([2, 3], plan.Doubts.Indices);
        Assert.Equal([2, 3], Assert.Single(plan.Doubts.Groups));
        // Neither is set aside, and each is told what it would have to be.
        Assert.Null(plan.WithoutDoubtful);
        Assert.Equal(30.6, plan.Readings[2].WouldRead!.Value, 1e-6);
        Assert.Equal(30.0, plan.Readings[3].WouldRead!.Value, 1e-6);
    }

    [Fact]
    public void With_redundancy_one_an_error_just_past_two_sigma_is_still_shown()
    {
        // One surplus reading: every test is the same test, so 1.96 rules, not a value meant for hundreds of readings.
        Assert.Equal(1.959964, Testing.CriticalValue(40, 1), 6);
        var doubts = Adjust.Solve(Triangle(30.0, 30.0 + 2.2 * 0.02 * Math.Sqrt(2))).Doubts;
        Assert.Equal([2, 3], doubts.Indices);
    }

    [Fact]
    [Truth(Grade.Published, "Baarda 1968: 3.29 for a single test at 0.001, two-sided")]
    public void The_critical_value_of_one_test_in_a_wide_survey_follows_the_number_of_readings()
    {
        // Šidák at 5 % over 50.3 tests is Baarda's single-test 0.001 to a few parts in a thousand.
        Assert.InRange(Testing.CriticalValue(51, 1000), 3.28, 3.30);
        Assert.True(Testing.CriticalValue(800, 400) > 3.9);
    }

    static Sample Triangle(double first, double second)
    {
        Feature At(string id, double x, double y) => new(id, FeatureKind.Point) { Sketch = new Vec2(x, y) };
        Reading Read(int i, string a, string b, double v) => new(i, ReadingKind.CentreDistance, a, b, v, 0.02);
        return new Sample("t", "triangle", [At("A", 0, 0), At("B", 40, 0), At("C", 20, 22)],
            [Read(0, "A", "B", 40), Read(1, "B", "C", 30), Read(2, "A", "C", first), Read(3, "C", "A", second)]);
    }
}
