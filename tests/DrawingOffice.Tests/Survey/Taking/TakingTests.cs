using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Taking;

public class TakingTests(ITestOutputHelper output)
{
    static Feature Hole(string id, double x, double y, double size = 10) => new(id, FeatureKind.Hole) { Sketch = new(x, y), SketchSize = size };

    static Feature Corner(string id, double x, double y) => new(id, FeatureKind.Point) { Sketch = new(x, y) };

    static Sample Of(params Feature[] features) => new("s", "", [.. features], []);

    static readonly Dictionary<string, Sample> Small = new()
    {
        ["three holes"] = Of(Hole("H1", 0, 0), Hole("H2", 60, 5, 12), Hole("H3", 25, 40, 8)),
        ["three holes and a corner"] = Of(Hole("H1", 0, 0), Hole("H2", 60, 5, 12), Hole("H3", 25, 40, 8), Corner("C", -10, 42)),
        ["two holes over an edge"] = Of(Corner("A", -10, -20), Corner("B", 70, -20), new("E", FeatureKind.Edge) { From = "A", To = "B" }, Hole("H1", 0, 0), Hole("H2", 60, 5, 12)),
        ["three holes and a free edge"] = Of(Hole("H1", 0, 0), Hole("H2", 60, 5, 12), Hole("H3", 25, 40, 8), new("F", FeatureKind.Edge) { Sketch = new(30, -20), SketchTurn = 0.05 }),
        ["a triangle and a hole"] = Of(Corner("A", 0, 0), Corner("B", 80, 0), Corner("C", 30, 50), Hole("H", 35, 20), new("E", FeatureKind.Edge) { From = "A", To = "B" }),
        ["five corners"] = Of(Corner("A", 0, 0), Corner("B", 80, 3), Corner("C", 75, 50), Corner("D", -4, 45), Corner("E", 40, 70)),
    };

    public static TheoryData<string> SmallNames => [.. Small.Keys];

    static Matrix<double> Rows(FlatTaking network, IEnumerable<int> chosen)
    {
        TakeRow[] rows = [.. network.Given, .. network.Taken, .. chosen.Select(c => network.Candidates[c])];
        var dense = Matrix<double>.Build.Dense(Math.Max(1, rows.Length), network.BlockOf.Length);
        for (var r = 0; r < rows.Length; r++)
            for (var k = 0; k < rows[r].Columns.Length; k++) dense[r, rows[r].Columns[k]] += rows[r].Rates[k] / rows[r].Std;
        return dense;
    }

    /// <summary>Rank by singular values, redundancy numbers from the pseudo-inverse: nothing of the engine but its rows.</summary>
    static bool HoldsAndChecks(FlatTaking network, int[] chosen)
    {
        var n = network.BlockOf.Length;
        if (network.Given.Count + network.Taken.Count + chosen.Length <= n - 3) return false;
        var rows = Rows(network, chosen);
        var svd = rows.Svd();
        if (svd.Rank < n - 3) return false;
        for (var r = 0; r < rows.RowCount; r++)
        {
            double leverage = 0;
            for (var k = 0; k < n - 3; k++) leverage += svd.U[r, k] * svd.U[r, k];
            if (1 - leverage < ShortestList.Checked) return false;
        }
        return true;
    }

    [Theory, MemberData(nameof(SmallNames))]
    [Truth(Grade.SecondImplementation, "every shorter subset of the candidates tried, with MathNet.Numerics 5.0.0 singular values")]
    public void No_shorter_list_holds_and_checks_a_small_part(string name)
    {
        var network = new FlatTaking(Small[name], BenchTool.Usual, CancellationToken.None);
        var choice = ShortestList.Of(network, null, CancellationToken.None);
        var m = network.Candidates.Count;
        var found = HoldsAndChecks(network, [.. choice.Chosen]);
        output.WriteLine($"{name}: {m} candidates, {choice.Chosen.Length} chosen, at least {choice.Least}, complete {found}; redundancy {string.Join(" ", choice.Redundancy.Select(r => $"{r:0.000}"))}");
        Assert.InRange(m, 1, 16);
        Assert.InRange(choice.Least, 0, choice.Chosen.Length);
        // Where the list is not complete no list may be: then even all candidates together leave something unchecked.
        if (!found)
        {
            Assert.False(HoldsAndChecks(network, [.. Enumerable.Range(0, m)]));
            return;
        }
        for (var set = 0u; set < 1u << m; set++)
            if (BitOperations.PopCount(set) < choice.Chosen.Length && BitOperations.PopCount(set) >= choice.Least)
                Assert.False(HoldsAndChecks(network, [.. Enumerable.Range(0, m).Where(c => (set >> c & 1) == 1)]), "a shorter list would do");
    }

    static Sample Plate(int holes, ulong seed)
    {
        var chance = new Chance(seed);
        var corners = new[] { Corner("C1", 0, 0), Corner("C2", 140, 0), Corner("C3", 140, 90) };
        return Of([.. corners, new("E1", FeatureKind.Edge) { From = "C1", To = "C2" }, .. Enumerable.Range(0, holes).Select(i => Hole($"H{i}", 15 + 27 * (i % 5) + chance.Uniform(-5, 5), 15 + 27 * (i / 5) + chance.Uniform(-5, 5), chance.Uniform(6, 12)))]);
    }

    [Theory, InlineData(5, 1), InlineData(9, 2), InlineData(14, 3)]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, dense singular values: rank, and redundancy numbers from the projector")]
    public void A_plate_is_held_and_every_reading_checked(int holes, ulong seed)
    {
        var sample = Plate(holes, seed);
        var network = new FlatTaking(sample, BenchTool.Usual, CancellationToken.None);
        var choice = ShortestList.Of(network, null, CancellationToken.None);
        output.WriteLine($"{holes} holes: {choice.Chosen.Length} readings, at least {choice.Least}");
        Assert.True(HoldsAndChecks(network, [.. choice.Chosen]));
        Assert.InRange(choice.Chosen.Length, choice.Least, choice.Least * 5 / 4);
        var rows = Rows(network, choice.Chosen);
        var svd = rows.Svd();
        for (var i = 0; i < choice.Chosen.Length; i++)
        {
            double leverage = 0;
            for (var k = 0; k < network.BlockOf.Length - 3; k++) leverage += svd.U[i, k] * svd.U[i, k];
            Assert.Equal(1 - leverage, choice.Redundancy[i], 1e-4);
        }
    }

    [Fact]
    [Truth(Grade.Property, "a list that was taken leaves nothing to take")]
    public void Readings_taken_already_count()
    {
        var sample = Plate(5, 1);
        var list = TakingPlan.Of(sample);
        Assert.True(list.Complete);
        Assert.Equal(Enumerable.Range(1, list.Steps.Length), list.Steps.Select(s => s.Number));
        Sample Taken(int count) => sample with { Readings = [.. list.Steps.Take(count).Select((s, i) => new Reading(i, s.Kind, s.From, s.To, s.Expected, 0.02))] };
        Assert.Empty(TakingPlan.Of(Taken(list.Steps.Length)).Steps);
        var half = TakingPlan.Of(Taken(list.Steps.Length / 2));
        Assert.InRange(half.Steps.Length, 1, list.Steps.Length - 1);
    }

    [Fact]
    [Truth(Grade.CommonPractice, "sizes before what leans on them; one tool is finished before the next is taken up")]
    public void Sizes_come_first_and_tools_are_not_mixed()
    {
        var steps = TakingPlan.Of(Plate(9, 2), [.. BenchTool.Calliper(100), BenchTool.Tape(3000)], 0.05).Steps;
        var lastSize = steps.Where(s => s.Kind == ReadingKind.Diameter).Select(s => s.Number).DefaultIfEmpty(0).Max();
        Assert.All(steps.Where(s => s.Kind != ReadingKind.Diameter), s => Assert.True(s.Number > lastSize));
        var ways = steps.Where(s => s.Kind != ReadingKind.Diameter).Select(s => s.Way).ToList();
        var changes = ways.Zip(ways.Skip(1)).Count(w => w.First != w.Second);
        Assert.Equal(ways.Distinct().Count() - 1, changes);
    }

    [Fact]
    [Truth(Grade.Property, "a tool reads no farther than it reaches")]
    public void What_no_tool_reaches_is_said()
    {
        var list = TakingPlan.Of(Of(Hole("H1", 0, 0), Hole("H2", 60, 5), Hole("Far", 900, 40)), BenchTool.Calliper(150));
        Assert.Contains("Far", list.Undetermined);
        Assert.Null(list.LargestStd);
        Assert.False(list.Complete);
        Assert.Contains(list.Cautions, c => c.Contains("Far", StringComparison.Ordinal));
        Assert.DoesNotContain(list.Steps, s => s.Expected > 150);
    }

    [Fact]
    [Truth(Grade.Property, "a wanted ± adds readings until it is met or the tools give no more")]
    public void A_wanted_plus_minus_is_met_or_said_to_be_out_of_reach()
    {
        var sample = Plate(5, 4);
        var (plain, fine) = (TakingPlan.Of(sample), TakingPlan.Of(sample, wantedStd: 0.03));
        Assert.InRange(fine.LargestStd!.Value, 0, 0.03);
        Assert.True(fine.Steps.Length >= plain.Steps.Length);
        Assert.Contains(TakingPlan.Of(sample, wantedStd: 0.001).Cautions, c => c.Contains("out of reach", StringComparison.Ordinal));
    }

    [Fact]
    [Truth(Grade.Property, "without a rough place nothing says what lies near what")]
    public void A_feature_without_a_place_is_refused()
    {
        var sample = Of(Hole("H1", 0, 0), new Feature("H2", FeatureKind.Hole));
        Assert.StartsWith("feature H2, place: nothing is given", Assert.Throws<RefusedException>(() => TakingPlan.Of(sample)).Message, StringComparison.Ordinal);
    }
}
