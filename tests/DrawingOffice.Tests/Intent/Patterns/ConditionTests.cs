using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent.Patterns;

/// <summary>Features that are marked: repaired ones stay out, worn ones say as much as their wear allows.</summary>
[Truth(Grade.Property, "four holes of one size at a rectangle's corners, one of them worn, bushed or spoilt by construction")]
public class ConditionTests
{
    static readonly string[] Holes = ["H1", "H2", "H3", "H4"];

    /// <summary>60 by 40, 8 mm, every distance read; H4 read larger by some and marked.</summary>
    static Sample Plate(FeatureCondition h4, double larger)
    {
        Vec2[] at = [new(0, 0), new(60, 0), new(60, 40), new(0, 40)];
        var readings = new List<Reading>();
        void Read(ReadingKind kind, int from, int? to, double value) => readings.Add(new(readings.Count, kind, Holes[from], to is { } t ? Holes[t] : null, value, 0.02));
        for (var i = 0; i < 4; i++)
        {
            Read(ReadingKind.Diameter, i, null, 8 + 0.01 * (i % 3) + (i == 3 ? larger : 0));
            for (var k = i + 1; k < 4; k++) Read(ReadingKind.CentreDistance, i, k, at[i].DistanceTo(at[k]) + 0.02 * (k - 2));
        }
        return new("four", "Four holes", [.. Holes.Select((h, i) => new Feature(h, FeatureKind.Hole) { Sketch = at[i], Condition = i == 3 ? h4 : FeatureCondition.Sound })], [.. readings]);
    }

    static IntentPlan Found(Sample sample, IntentWish? wish = null) => Intention.Find(Adjust.Solve(sample, searchMirrors: false), wish);

    static bool OneSize(IntentPlan found) => found.Held.Any(f => f.Kind == PatternKind.EqualSize && f.Features.Contains("H4"));

    [Fact]
    public void Nothing_is_read_into_a_repaired_hole_and_the_words_say_so()
    {
        Assert.True(OneSize(Found(Plate(FeatureCondition.Sound, 0))));
        var found = Found(Plate(FeatureCondition.Repaired, 0));
        Assert.All(found.Findings, f => Assert.DoesNotContain("H4", f.Features));
        Assert.Contains(found.Held, f => f.Kind == PatternKind.EqualSize && f.Features.Length == 3);
        Assert.Contains("Repaired, and so left out of every pattern and drawn as measured: H4.", found.Cautions);
        Assert.Equal(found.Plan.Of("H4").Size!.Value.Value, found.Of("H4")!.Size!.Value, 1e-9);
    }

    [Fact]
    public void A_repaired_edge_takes_its_corners_with_it_and_leaves_the_others()
    {
        var plate = PlateShop.Patterned(9, 10).Sample;
        var found = Found(plate with { Features = [.. plate.Features.Select(f => f.Id == "E1" ? f with { Condition = FeatureCondition.Repaired } : f)] });
        Assert.All(found.Findings, f => Assert.Empty(f.Features.Intersect(["E1", "C1", "C2"])));
        Assert.All(found.Findings, f => Assert.DoesNotContain("E1", f.About ?? ""));
        Assert.Contains(found.Held, f => f.Kind == PatternKind.Parallel && f.Features.Contains("E2") && f.Features.Contains("E4"));
        Assert.Contains("Repaired, and so left out of every pattern and drawn as measured: C1, C2 and E1 (a corner goes with its edge).", found.Cautions);
    }

    [Fact]
    public void Nothing_can_be_forced_on_a_repaired_hole_but_an_old_refusal_of_it_does_no_harm()
    {
        var bushed = Plate(FeatureCondition.Repaired, 0);
        var told = Assert.Throws<RefusedException>(() => Found(bushed, new() { Forced = ["equal:H1,H4"] })).Message;
        Assert.Contains("H4 is repaired", told);
        Assert.Contains(Found(bushed, new() { Refused = ["equal:H1,H4"] }).Findings, f => f.Standing == Standing.Refused && f.Key == "equal:H1,H4");
    }

    /// <summary>0.3 mm over its fellows: too far for making, near enough for wear.</summary>
    [Fact]
    public void A_worn_hole_joins_its_fellows_only_where_it_is_marked()
    {
        var sound = Found(Plate(FeatureCondition.Sound, 0.3));
        var worn = Found(Plate(FeatureCondition.Worn, 0.3));
        Assert.False(OneSize(sound));
        Assert.True(OneSize(worn));
        Assert.True(worn.Plan.Of("H4").Size!.Value.Std > 3 * sound.Plan.Of("H4").Size!.Value.Std);
        Assert.Contains("H4 is worn: what is told of it is what it was made to, as far as the wear marked allows.", worn.Cautions);
    }

    /// <summary>2.6 mm over is more than any usual wear; a size that fits nothing else.</summary>
    [Fact]
    public void A_worn_hole_that_wear_does_not_bring_back_is_left_as_measured()
    {
        var found = Found(Plate(FeatureCondition.Worn, 2.6));
        Assert.False(OneSize(found));
        var near = Found(Plate(FeatureCondition.Bent, 0.3) is var s ? s with { Features = [.. s.Features.Select(f => f.Id == "H4" ? f with { Wear = 0.01 } : f)] } : null!);
        Assert.Contains(near.Findings, f => f.Standing == Standing.Rejected && f.Features.Contains("H4") && f.Words.Contains("left as measured: H4 is bent", StringComparison.Ordinal));
    }

    [Fact]
    [Truth(Grade.Property, "a figure read twice alike to the last hundredth is no pattern that follows from others")]
    public void Two_sizes_read_alike_follow_from_nothing()
    {
        var refused = Found(Plate(FeatureCondition.Sound, 0), new() { Refused = ["equal:H1,H2,H3,H4"] });
        Assert.DoesNotContain(refused.Held, f => f.Kind == PatternKind.EqualSize);
        Assert.All(refused.Findings.Where(f => f.Standing == Standing.Refused), f => Assert.Null(f.Odds));
    }

    /// <summary>The words of what was not taken agree with its odds, plate after plate.</summary>
    [Theory]
    [InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5), InlineData(6)]
    [Truth(Grade.Property, "odds of three to one are what a pattern is taken at; less is called chance, and chance alone")]
    public void What_is_called_chance_has_the_odds_of_chance(ulong seed)
    {
        IntentPlan[] all = [Found(PlateShop.Patterned(seed, 6).Sample), Found(PlateShop.Random(seed, 8).Sample)];
        foreach (var f in all.SelectMany(p => p.Findings).Where(f => f.Standing == Standing.Rejected))
        {
            var chance = f.Words.Contains("may as well be chance", StringComparison.Ordinal);
            Assert.True(!chance || f.LogOdds < Math.Log(3), $"{f.Words} {f.Odds}");
            if (f.LogOdds < 0 && f.Odds != "even") Assert.EndsWith("against it", f.Odds);
            Assert.True(f.LogOdds < 14, $"{f.Words} {f.LogOdds}");
        }
    }
}
