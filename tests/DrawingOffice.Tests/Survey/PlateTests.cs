using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

[Truth(Grade.SecondImplementation, "plate surveys adjusted in 45-digit arithmetic, truth/plates/README.md")]
public class PlateTests
{
    static readonly string[] All = ["plate-01-clean", "plate-02-one-gross", "plate-03-loose-hole", "plate-04-mirror"];

    public static TheoryData<string> Names => [.. All];

    [Theory, MemberData(nameof(Names))]
    public void Every_answer_comes_out(string name)
    {
        var (sample, answers) = Plates.Load(name);
        var plan = Adjust.Solve(sample);
        Assert.True(plan.Convergence.Converged, plan.Convergence.Words);
        Agrees(answers, plan);
    }

    [Fact]
    public void One_gross_error_is_found_and_the_rest_adjusted_without_it()
    {
        var (sample, answers) = Plates.Load("plate-02-one-gross");
        var plan = Adjust.Solve(sample);
        Assert.Equal([64], plan.Doubts.Indices);
        Assert.True(plan.Doubts.Confirmed);
        Agrees(answers.GetProperty("without_gross_errors"), plan.WithoutDoubtful!);
    }

    [Theory, InlineData("plate-01-clean"), InlineData("plate-03-loose-hole"), InlineData("plate-04-mirror")]
    public void Clean_readings_are_not_accused(string name)
    {
        var plan = Adjust.Solve(Plates.Load(name).Sample);
        Assert.Empty(plan.Doubts.Indices);
        Assert.Null(plan.WithoutDoubtful);
    }

    [Fact]
    public void The_loose_hole_is_named_with_its_one_free_motion()
    {
        var (sample, answers) = Plates.Load("plate-03-loose-hole");
        var plan = Adjust.Solve(sample);
        var group = Assert.Single(plan.Loose);
        Assert.Equal(["H4"], group.Ids);
        Assert.Equal(1, group.FreeMotions);
        Assert.Contains("index 22", group.Reason);
        Assert.Equal(
            answers.GetProperty("undetermined_distances").EnumerateArray().Select(p => (p[0].GetString()!, p[1].GetString()!)),
            plan.UndeterminedDistances());
        // It swings on a circle about H3: the arrow stands square to the line between them.
        var arrow = Assert.Single(Assert.Single(group.Motions));
        var arm = plan.Of("H4").At - plan.Of("H3").At;
        Assert.InRange(arrow.Move.Unit.Dot(arm.Unit), -1e-6, 1e-6);
    }

    [Fact]
    public void The_mirrored_hole_is_asked_about_with_the_readings_that_decide()
    {
        var (sample, answers) = Plates.Load("plate-04-mirror");
        var expected = answers.GetProperty("mirror");
        var plan = Adjust.Solve(sample);
        var mirror = Assert.Single(plan.Mirrors);
        Assert.Equal(Plates.Strings(expected.GetProperty("points_that_flip")), mirror.Flips);
        Assert.Equal(Plates.Strings(expected.GetProperty("about_line_through")), mirror.About);
        Close(expected.GetProperty("weighted_sum_of_squares_second").GetDouble(), mirror.WeightedSumOfSquares, 1e-8);
        // Without a sketch of H5 either of the two may come first; the deciding pairs are the same.
        var pairs = expected.GetProperty("deciding_readings").EnumerateArray().Select(d => (d.GetProperty("from").GetString()!, d.GetProperty("to").GetString()!));
        Assert.Equal(pairs, mirror.Deciding.Select(d => (d.From, d.To)));
    }

    [Theory, MemberData(nameof(Names))]
    public void Without_any_sketch_the_same_shape_comes_out(string name)
    {
        var (sample, answers) = Plates.Load(name);
        var blind = sample with { Features = [.. sample.Features.Select(f => f with { Sketch = null })] };
        var plan = Adjust.Solve(blind);
        Close(answers.GetProperty("weighted_sum_of_squares").GetDouble(), plan.WeightedSumOfSquares, 1e-8);
    }

    static void Agrees(JsonElement answers, Plan plan)
    {
        Assert.Equal(answers.GetProperty("unknowns").GetInt32(), plan.Unknowns);
        Assert.Equal(answers.GetProperty("datum_freedoms").GetInt32(), plan.DatumFreedoms);
        Assert.Equal(answers.GetProperty("loose_freedoms").GetInt32(), plan.LooseFreedoms);
        Assert.Equal(answers.GetProperty("redundancy").GetInt32(), plan.Redundancy);
        Close(answers.GetProperty("weighted_sum_of_squares").GetDouble(), plan.WeightedSumOfSquares, 1e-9);

        // The mirrored hole may come out on its other side; its distances are compared in their own test.
        var flipped = plan.Mirrors.SelectMany(m => m.Flips).ToHashSet();
        var distances = plan.Distances().ToDictionary(d => (d.From, d.To));
        foreach (var d in answers.GetProperty("distances").EnumerateArray())
        {
            var (from, to) = (d.GetProperty("from").GetString()!, d.GetProperty("to").GetString()!);
            var got = distances[(from, to)];
            if (flipped.Contains(from) || flipped.Contains(to)) continue;
            Close(d.GetProperty("distance_mm").GetDouble(), got.Distance, 1e-9);
            Close(d.GetProperty("std_mm").GetDouble(), got.Std, 1e-7);
        }
        Assert.Equal(answers.GetProperty("distances").GetArrayLength(), distances.Count);
        foreach (var d in answers.GetProperty("diameters").EnumerateArray())
        {
            var size = plan.Of(d.GetProperty("id").GetString()!).Size!.Value;
            Close(d.GetProperty("diameter_mm").GetDouble(), size.Value, 1e-9);
            Close(d.GetProperty("std_mm").GetDouble(), size.Std, 1e-7);
        }
        foreach (var r in answers.GetProperty("readings").EnumerateArray())
        {
            var got = plan.Readings[r.GetProperty("index").GetInt32()];
            Assert.Equal(r.GetProperty("adjusted_mm").GetDouble(), got.Adjusted, 1e-8);
            Assert.Equal(r.GetProperty("redundancy_number").GetDouble(), got.RedundancyNumber, 1e-7);
            if (r.GetProperty("normalised_residual").ValueKind == JsonValueKind.Null) Assert.Null(got.Normalised);
            else if (got.RedundancyNumber > 0.001) Close(r.GetProperty("normalised_residual").GetDouble(), got.Normalised!.Value, 1e-5);
        }
    }

    static void Close(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Max(1e-6, Math.Abs(expected)), $"expected {expected:R}, got {actual:R}");
}
