using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.DrawingOffice.Tests.Survey.Solid;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Taking;

public class SolidTakingTests(ITestOutputHelper output)
{
    static SolidFeature Corner(string id, double x, double y, double z) => new(id, SolidKind.Point) { Sketch = new(x, y, z) };

    static readonly SolidFeature s_plate = new("S1", SolidKind.SetUp) { SketchDirection = new(0.02, 0.01, 1) };

    static SolidSample Of(params SolidFeature[] features) => new("s", "", [.. features], []);

    static readonly SolidFeature[] s_corners = [Corner("A", 0, 0, 0), Corner("B", 80, 3, 5), Corner("C", 75, 50, -4), Corner("D", -4, 45, 40), Corner("E", 40, 20, 60), Corner("F", 35, -30, 25)];

    static readonly Dictionary<string, SolidSample> s_small = new()
    {
        ["five corners"] = Of(s_corners[..5]),
        ["six corners"] = Of(s_corners),
        ["four corners on a plate"] = Of([.. s_corners[..4], s_plate]),
        ["five corners on a plate"] = Of([.. s_corners[..5], s_plate]),
    };

    public static TheoryData<string> SmallNames => [.. s_small.Keys];

    /// <summary>The bracket of the other tests before anything is read: only which corner lies on which face is known.</summary>
    static SolidSample Sketched()
    {
        var sample = Brackets.Measured(new Chance(6));
        Vec3[] ups = [new(0.02, -0.03, 1), new(1, 0.04, -0.02), new(-0.03, 1, 0.05)];
        return sample with
        {
            Features = [.. sample.Features.Select(f => f.Kind == SolidKind.SetUp ? f with { SketchDirection = ups[f.Id[1] - '1'] } : f)],
            Readings = [.. sample.Readings.Where(r => r.Kind == SolidReadingKind.On).Select((r, i) => r with { Index = i })],
        };
    }

    static Matrix<double> Rows(SolidTaking network, IEnumerable<int> chosen)
    {
        TakeRow[] rows = [.. network.Given, .. network.Taken, .. chosen.Select(c => network.Candidates[c])];
        var dense = Matrix<double>.Build.Dense(Math.Max(1, rows.Length), network.BlockOf.Length);
        for (var r = 0; r < rows.Length; r++)
            for (var k = 0; k < rows[r].Columns.Length; k++) dense[r, rows[r].Columns[k]] += rows[r].Rates[k] / rows[r].Std;
        return dense;
    }

    /// <summary>Rank by singular values, redundancy numbers of the chosen from the projector; null where something is loose.</summary>
    static double[]? Checks(SolidTaking network, int[] chosen)
    {
        var (n, given) = (network.BlockOf.Length, network.Given.Count + network.Taken.Count);
        if (given + chosen.Length < n - 6) return null;
        var svd = Rows(network, chosen).Svd();
        // A set-up's direction and its sketch share no scale with a height: what is loose is loose by many powers of ten.
        if (svd.S[n - 7] < 1e-7 * svd.S[0]) return null;
        double Leverage(int row) => Enumerable.Range(0, n - 6).Sum(k => svd.U[row, k] * svd.U[row, k]);
        return [.. chosen.Select((_, i) => 1 - Leverage(given + i))];
    }

    static bool HoldsAndChecks(SolidTaking network, int[] chosen) => Checks(network, chosen) is { } all && all.All(r => r >= ShortestList.Checked);

    [Theory, MemberData(nameof(SmallNames))]
    [Truth(Grade.SecondImplementation, "every shorter subset of the candidates tried, with MathNet.Numerics 5.0.0 singular values")]
    public void No_shorter_list_holds_and_checks_a_few_corners(string name)
    {
        var network = new SolidTaking(s_small[name], BenchTool.UsualInSpace, CancellationToken.None);
        var choice = ShortestList.Of(network, null, CancellationToken.None);
        var m = network.Candidates.Count;
        output.WriteLine($"{name}: {m} candidates, {choice.Chosen.Length} chosen, at least {choice.Least}; redundancy {string.Join(" ", choice.Redundancy.Select(r => $"{r:0.000}"))}");
        Assert.InRange(m, 10, 15);
        Assert.InRange(choice.Least, 1, choice.Chosen.Length);
        if (!HoldsAndChecks(network, [.. choice.Chosen]))
        {
            Assert.False(HoldsAndChecks(network, [.. Enumerable.Range(0, m)]));
            return;
        }
        for (var set = 0u; set < 1u << m; set++)
            if (BitOperations.PopCount(set) < choice.Chosen.Length && BitOperations.PopCount(set) >= choice.Least)
                Assert.False(HoldsAndChecks(network, [.. Enumerable.Range(0, m).Where(c => (set >> c & 1) == 1)]), "a shorter list would do");
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, dense singular values: rank, and redundancy numbers from the projector")]
    public void A_bracket_is_held_and_every_reading_checked()
    {
        var network = new SolidTaking(Sketched(), BenchTool.UsualInSpace, CancellationToken.None);
        var choice = ShortestList.Of(network, null, CancellationToken.None);
        var redundancy = Checks(network, [.. choice.Chosen]);
        output.WriteLine($"{network.Candidates.Count} candidates, {choice.Chosen.Length} readings, at least {choice.Least}");
        Assert.NotNull(redundancy);
        for (var i = 0; i < redundancy.Length; i++)
        {
            Assert.InRange(redundancy[i], ShortestList.Checked, 1);
            Assert.Equal(redundancy[i], choice.Redundancy[i], 2e-3);
        }
    }

    [Fact]
    [Truth(Grade.Property, "a list that was taken holds the part in the survey itself")]
    public void The_list_once_taken_holds_the_bracket()
    {
        var (sketch, truth) = (Sketched(), Brackets.Measured(new Chance(6), rough: 0, noise: 0));
        var list = SolidTakingPlan.Of(sketch);
        Assert.True(list.Complete, string.Join(" ", list.Cautions));
        Assert.Equal(Enumerable.Range(1, list.Steps.Length), list.Steps.Select(s => s.Number));
        // Read on the true shape, in set-ups that stand as sketched.
        var whole = SolidAdjust.Solve(truth, searchMirrors: false);
        SolidReading Read(TakingStep<SolidReadingKind> s, int i) => new(sketch.Readings.Length + i, s.Kind, s.From, s.To, whole.Quantity(s.Kind, s.From, s.To)!.Value.Value, s.Kind == SolidReadingKind.Angle ? 0.006 : 0.02);
        var taken = sketch with { Readings = [.. sketch.Readings, .. list.Steps.Select(Read)] };
        var plan = SolidAdjust.Solve(taken, searchMirrors: false);
        Assert.Equal(0, plan.LooseFreedoms);
        Assert.Empty(plan.Doubts.Indices);
        Assert.All(plan.Distances(), d => Assert.Equal(whole.Distance(d.From, d.To)!.Value.Value, d.Distance, 1e-3));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "sizes first; one tool is finished before the next; the part is stood up once for each set-up")]
    public void Heights_come_last_set_up_by_set_up()
    {
        var steps = SolidTakingPlan.Of(Sketched()).Steps;
        var heights = steps.Where(s => s.Way == Way.HeightGauge).ToList();
        Assert.All(steps.Where(s => s.Way != Way.HeightGauge), s => Assert.True(s.Number < heights[0].Number));
        Assert.All(steps.Where(s => s.Kind == SolidReadingKind.Diameter), s => Assert.InRange(s.Number, 1, 5));
        Assert.Equal(heights.Select(s => s.To).Distinct().Count() - 1, heights.Zip(heights.Skip(1)).Count(h => h.First.To != h.Second.To));
        Assert.All(heights.GroupBy(s => s.To), g => Assert.True(g.Count() > 3, "three heights settle how the part stands and tell nothing"));
    }

    [Fact]
    [Truth(Grade.Property, "without a rough place or way nothing says what lies near what; without a tool nothing is settled")]
    public void What_is_not_sketched_is_refused_and_what_no_tool_reaches_is_said()
    {
        string Refused(SolidFeature f) => Assert.Throws<RefusedException>(() => SolidTakingPlan.Of(Of([.. s_corners, f]))).Message;
        Assert.StartsWith("feature G, place: nothing is given", Refused(new("G", SolidKind.Point)), StringComparison.Ordinal);
        Assert.StartsWith("feature S1, way: nothing is given", Refused(s_plate with { SketchDirection = null }), StringComparison.Ordinal);
        var list = SolidTakingPlan.Of(Of([.. s_corners, Corner("Far", 900, 0, 0)]), BenchTool.Calliper(150));
        Assert.Contains("Far", list.Undetermined);
        Assert.Null(list.LargestStd);
        Assert.Contains(list.Cautions, c => c.Contains("Far", StringComparison.Ordinal));
    }
}
