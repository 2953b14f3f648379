using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>Loose and mirrored groups, not only single holes: a body of four points and a triangle of three that hangs on it.</summary>
[Truth(Grade.Property, "counting of bars and freedoms (Laman); exact mirror images")]
public class GroupTests
{
    static readonly Dictionary<string, Vec2> Places = new()
    {
        ["A"] = new(0, 0),
        ["B"] = new(80, 0),
        ["C"] = new(82, 55),
        ["D"] = new(-3, 50),
        ["P"] = new(110, 20),
        ["Q"] = new(125, 45),
        ["R"] = new(140, 10),
    };

    static Sample Hung(params (string, string)[] ties)
    {
        (string, string)[] all = [("A", "B"), ("B", "C"), ("C", "D"), ("D", "A"), ("A", "C"), ("B", "D"), ("P", "Q"), ("Q", "R"), ("P", "R"), .. ties];
        return new Sample("group", "", [.. Places.Select(p => new Feature(p.Key, FeatureKind.Point) { Sketch = p.Value + new Vec2(0.5, -0.4) })],
            [.. all.Select((t, i) => new Reading(i, ReadingKind.CentreDistance, t.Item1, t.Item2, Places[t.Item1].DistanceTo(Places[t.Item2]), 0.02))]);
    }

    [Fact]
    public void A_triangle_on_two_bars_swings_as_one_group()
    {
        var plan = Adjust.Solve(Hung(("B", "P"), ("C", "Q")));
        Assert.Equal(1, plan.LooseFreedoms);
        var group = Assert.Single(plan.Loose);
        Assert.Equal(["P", "Q", "R"], group.Ids);
        Assert.Equal(1, group.FreeMotions);
        Assert.NotNull(plan.Distance("P", "R"));
        Assert.Null(plan.Distance("A", "R"));
    }

    [Fact]
    public void A_triangle_on_no_bar_has_three_free_motions()
    {
        var plan = Adjust.Solve(Hung());
        var group = Assert.Single(plan.Loose);
        Assert.Equal(3, group.FreeMotions);
        Assert.Equal(3, group.ReadingsMissing);
    }

    [Fact]
    public void Two_holes_that_swing_by_themselves_are_two_groups()
    {
        var sample = Hung(("B", "P"), ("C", "P"), ("B", "Q"), ("C", "R"));
        var alone = sample with { Readings = [.. sample.Readings.Where(r => !(r.From is "P" or "Q" or "R" && r.To is "P" or "Q" or "R" && r.From != "B")).Select((r, i) => r with { Index = i })] };
        var plan = Adjust.Solve(alone);
        Assert.Equal(2, plan.LooseFreedoms);
        Assert.Equal([["Q"], ["R"]], plan.Loose.Select(g => g.Ids.ToArray()));
        Assert.All(plan.Loose, g => Assert.Equal((1, 1, 1), (g.FreeMotions, g.ReadingsMissing, g.Motions.Length)));
    }

    [Fact]
    public void A_triangle_that_hangs_on_two_points_may_lie_on_either_side()
    {
        var plan = Adjust.Solve(Hung(("B", "P"), ("C", "P"), ("B", "Q"), ("C", "Q"), ("C", "R")));
        var mirror = Assert.Single(plan.Mirrors);
        Assert.Equal(["B", "C"], mirror.About);
        // Turning the triangle over is the same second shape as turning the rest over; the smaller part is named.
        Assert.Equal(["A", "D"], mirror.Flips);
    }

    [Fact]
    public void A_hole_that_hangs_on_a_mirrored_hole_goes_with_it()
    {
        var places = new Dictionary<string, Vec2>(Places) { ["Q"] = new(60, 80) };
        var body = Hung().Readings.Take(6).Select(r => (r.From, To: r.To!));
        var sample = new Sample("nested", "", [.. new[] { "A", "B", "C", "D", "P", "Q" }.Select(id => new Feature(id, FeatureKind.Point) { Sketch = places[id] })],
            [.. body.Concat([("B", "P"), ("C", "P"), ("P", "Q"), ("D", "Q")]).Select((t, i) => new Reading(i, ReadingKind.CentreDistance, t.Item1, t.Item2, places[t.Item1].DistanceTo(places[t.Item2]), 0.02))]);
        var mirrors = Adjust.Solve(sample).Mirrors;
        Assert.Equal(["P,Q", "Q"], mirrors.Select(m => string.Join(",", m.Flips)).Order());
        // P mirrored about B-C lies so far from A, whatever Q does.
        var unit = (places["C"] - places["B"]).Unit;
        var image = places["P"] - 2 * unit.Left.Dot(places["P"] - places["B"]) * unit.Left;
        Assert.Equal(image.Length, mirrors.Single(m => m.Flips.Contains("P")).Second.Single(d => (d.From, d.To) == ("A", "P")).Distance, 1e-6);
    }

    [Fact]
    public void A_hole_with_one_distance_and_one_edge_may_lie_on_either_side_of_the_foot()
    {
        var sample = new Sample("foot", "",
            [.. new[] { "A", "B", "C", "D" }.Select(id => new Feature(id, FeatureKind.Point) { Sketch = Places[id] }), new Feature("E", FeatureKind.Edge) { From = "A", To = "B" }, new Feature("H", FeatureKind.Point)],
            [.. Hung().Readings.Take(6), new Reading(6, ReadingKind.CentreToEdge, "H", "E", 20, 0.02), new Reading(7, ReadingKind.CentreDistance, "H", "D", 45, 0.02)]);
        var plan = Adjust.Solve(sample);
        Assert.Equal(0, plan.LooseFreedoms);
        Assert.NotEmpty(plan.Mirrors);
        Assert.All(plan.Mirrors, m => Assert.Equal(["H"], m.Flips));
    }
}
