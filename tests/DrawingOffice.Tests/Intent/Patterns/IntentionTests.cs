using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent.Patterns;

/// <summary>Plates whose drawing is known: what is found must be what was drawn.</summary>
[Truth(Grade.Property, "plates drawn, made, worn and measured by seeded simulation that shares no code with the search")]
public class IntentionTests(ITestOutputHelper output)
{
    /// <summary>The whole bench runs sixty; these bounds are below what these ten gave when they were set.</summary>
    [Fact]
    public void Most_of_what_was_drawn_is_found_and_most_of_what_is_found_was_drawn()
    {
        var score = Score.Nothing;
        for (ulong seed = 101; seed <= 110; seed++)
        {
            var plate = PlateShop.Patterned(seed, 4 + (int)(seed * 7 % 15));
            score += PlateJudge.Of(plate, Intention.Find(Adjust.Solve(plate.Sample, searchMirrors: false)));
        }
        output.WriteLine($"{score}; recall {score.Recall:0.000}, precision {score.Precision:0.000}, values {score.ValueRecall:0.000} and {score.ValuePrecision:0.000}");
        Assert.InRange(score.Recall, 0.95, 1);
        Assert.InRange(score.Precision, 0.95, 1);
        // Small plates hold few values, and a worn edge costs a whole column of them; sixty plates of all sizes give 0.93 and 0.95.
        Assert.InRange(score.ValueRecall, 0.8, 1);
        Assert.InRange(score.ValuePrecision, 0.85, 1);
    }

    [Theory]
    [InlineData(1), InlineData(2), InlineData(3)]
    public void A_plate_without_pattern_gives_next_to_none(ulong seed)
    {
        var plate = PlateShop.Random(seed, 14);
        var found = Intention.Find(Adjust.Solve(plate.Sample, searchMirrors: false));
        var accepted = found.Findings.Where(f => f.Standing == Standing.Accepted).ToList();
        output.WriteLine(string.Join("\n", accepted.Select(f => f.Words)));
        Assert.InRange(accepted.Count, 0, 3);
    }

    [Fact]
    public void What_is_found_holds_exactly_and_moves_little()
    {
        var plate = PlateShop.Patterned(9, 10);
        var found = Intention.Find(Adjust.Solve(plate.Sample, searchMirrors: false));
        var alike = found.Findings.First(f => f.Kind == PatternKind.EqualSize && f.Holds);
        var sizes = alike.Features.Select(id => found.Of(id)!.Size!.Value).ToList();
        Assert.InRange(sizes.Max() - sizes.Min(), 0, 1e-9);
        Assert.True(found.Test.Passes);
        Assert.All(found.Meant, m => Assert.InRange(m.Moved, 0, 0.6));
        Assert.Equal(found.Conditions, found.Test.Redundancy);
    }

    [Fact]
    public void The_person_is_obeyed()
    {
        var plate = PlateShop.Patterned(9, 10);
        var plan = Adjust.Solve(plate.Sample, searchMirrors: false);
        var free = Intention.Find(plan);
        var alike = free.Findings.First(f => f.Kind == PatternKind.EqualSize && f.Standing == Standing.Accepted);
        var (a, b) = (alike.Features[0], alike.Features[1]);

        var refused = Intention.Find(plan, new() { Refused = [$"equal:{a},{b}"] });
        Assert.NotEqual(refused.Of(a)!.Size!.Value, refused.Of(b)!.Size!.Value);
        Assert.Contains(refused.Findings, f => f.Standing == Standing.Refused && f.Key == $"equal:{a},{b}");

        var other = plan.Believed.Features.First(f => f.Kind == FeatureKind.Hole && !alike.Features.Contains(f.Id) && Math.Abs(f.Size!.Value.Value - free.Of(a)!.Size!.Value) > 0.5).Id;
        var forced = Intention.Find(plan, new() { Forced = [$"equal:{a},{other}"] });
        Assert.Contains(forced.Findings, f => f.Standing == Standing.Forced && f.Features.Contains(a) && f.Features.Contains(other));
        Assert.Contains(forced.Cautions, c => c.Contains("speak against it", StringComparison.Ordinal) && c.Contains("chi-square", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("equl:H1,H2", "begin it with one of")]
    [InlineData("equal:H1,H99", "no feature H99")]
    [InlineData("size:H1=banana", "listed size")]
    [InlineData("line:H1,H2", "say the direction")]
    [InlineData("angle:E1,E2=cold", "angle in degrees")]
    public void A_key_that_names_nothing_is_refused_in_a_sentence(string key, string wanted)
    {
        var plate = PlateShop.Patterned(9, 10);
        var plan = Adjust.Solve(plate.Sample, searchMirrors: false);
        var told = Assert.Throws<RefusedException>(() => Intention.Find(plan, new() { Forced = [key] })).Message;
        Assert.StartsWith($"pattern: \"{key}\"", told);
        Assert.Contains(wanted, told);
    }

    [Fact]
    public void It_can_be_stopped_and_says_how_far_it_is()
    {
        var plan = Adjust.Solve(PlateShop.Patterned(9, 10).Sample, searchMirrors: false);
        var steps = new List<IntentProgress>();
        Intention.Find(plan, progress: new Noted(steps));
        Assert.NotEmpty(steps);
        Assert.Equal(steps[^1].Of, steps[^1].Done);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => Intention.Find(plan, stop: stop.Token));
    }

    [Fact]
    public void A_plan_that_has_not_settled_is_refused()
    {
        var plan = Adjust.Solve(PlateShop.Patterned(9, 10).Sample, searchMirrors: false);
        var adrift = plan with { Convergence = new(false, 1, 1, "not settled after 200 steps"), WithoutDoubtful = null };
        Assert.Contains("its readings must agree", Assert.Throws<RefusedException>(() => Intention.Find(adrift)).Message);
    }

    sealed class Noted(List<IntentProgress> steps) : IProgress<IntentProgress>
    {
        public void Report(IntentProgress value) => steps.Add(value);
    }
}
