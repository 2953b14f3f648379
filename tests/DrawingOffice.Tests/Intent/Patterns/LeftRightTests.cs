using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent.Patterns;

[Truth(Grade.Property, "a plate and its mirror image, made and measured apart by seeded simulation")]
public class LeftRightTests
{
    static Plan Measured(ulong seed, bool over, double shift = 0)
    {
        (string Id, Vec2 At, double Size)[] holes = [("H1", new(12, 15), 8), ("H2", new(80, 18 + shift), 8), ("H3", new(70, 52), 6), ("H4", new(20, 40), 10)];
        var chance = new Chance(seed);
        var made = holes.Select(h => h with { At = new Vec2((over ? -1 : 1) * h.At.X + 0.06 * chance.Normal(), h.At.Y + 0.06 * chance.Normal()).Turned(0.3) }).ToArray();
        var readings = new List<Reading>();
        for (var i = 0; i < made.Length; i++)
        {
            readings.Add(new(readings.Count, ReadingKind.Diameter, made[i].Id, null, made[i].Size + 0.02 * chance.Normal(), 0.02));
            for (var k = i + 1; k < made.Length; k++) readings.Add(new(readings.Count, ReadingKind.CentreDistance, made[i].Id, made[k].Id, made[i].At.DistanceTo(made[k].At) + 0.02 * chance.Normal(), 0.02));
        }
        return Adjust.Solve(new($"plate {seed}", "", [.. made.Select(h => new Feature(h.Id, FeatureKind.Hole) { Sketch = h.At })], [.. readings]), searchMirrors: false);
    }

    [Fact]
    public void A_left_and_a_right_hand_are_known_for_a_pair()
    {
        var told = LeftRight.Compare(Measured(1, over: false), Measured(2, over: true));
        Assert.True(told.Alike);
        Assert.Equal(4, told.Pairs.Length);
        Assert.All(told.Pairs, p => Assert.Equal(p.First, p.Second));
        Assert.Contains("other hand", told.Words);
    }

    [Fact]
    public void Two_of_one_hand_are_not_a_pair()
    {
        var told = LeftRight.Compare(Measured(1, over: false), Measured(2, over: false));
        Assert.False(told.Alike);
        Assert.Contains("of one hand", told.Words);
    }

    [Fact]
    public void A_hole_a_millimetre_off_breaks_the_pair()
    {
        var told = LeftRight.Compare(Measured(1, over: false), Measured(2, over: true, shift: 1.2));
        Assert.False(told.Alike);
        Assert.Contains("not a pair", told.Words);
    }

    [Fact]
    public void One_place_alone_is_refused()
    {
        var one = Adjust.Solve(new("one", "", [new("H1", FeatureKind.Hole)], [new(0, ReadingKind.Diameter, "H1", null, 8, 0.02)]), searchMirrors: false);
        Assert.Contains("at least two corners or holes", Assert.Throws<RefusedException>(() => LeftRight.Compare(one, Measured(2, over: true))).Message);
    }
}
