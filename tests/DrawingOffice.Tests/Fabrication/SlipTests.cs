using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.Maths;
using WitnessMark.Tests;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Tests.Fabrication;

public class SlipTests
{
    const double Degree = Math.PI / 180;
    const double In = 25.4;

    [Theory]
    [InlineData("m112", 58.345, 0, 5)]
    [InlineData("m112", 92.357, 2.5, 6)]
    [InlineData("m112", 37.785, 0, 5)]
    [InlineData("e81", 3.9762 * In, 0, 4)]
    [InlineData("e81", 4.3301 * In, 0, 4)]
    [InlineData("e81", 2.5 * In, 0, 2)]
    [Truth(Grade.Published, "worked stacks: a national laboratory's page (58.345 mm of the 112 set in 5), a worked question with 2.5 mm protectors (92.357), a slip gauge manual (37.785 in 5), two lessons on the 81 set (3.9762 in in 4; 4.3301 in in 4), a sine-bar lesson (2.5 in in 2)")]
    public void Published_stacks_are_made_exactly_with_no_more_blocks(string name, double mm, double wear, int blocks)
    {
        var set = SlipSets.Of(name).Value;
        var stack = Stacks.Find(set, mm, "1", wear).Value;
        Assert.Equal(mm, stack.Height.Value, 9);
        Assert.InRange(stack.Blocks.Length, 1, blocks);
        var own = wear > 0 ? stack.Blocks[1..^1] : stack.Blocks;
        Assert.Equal(own.Length, own.Distinct().Count());
        Assert.All(own, b => Assert.Contains(set.Blocks, s => Math.Abs(set.Mm(s) - b) < 1e-9));
    }

    [Theory]
    [InlineData("m46")]
    [InlineData("m47")]
    [InlineData("m88")]
    [InlineData("m112")]
    [InlineData("e81")]
    [Truth(Grade.SecondImplementation, "table of the least number of blocks for every height, filled block by block (0/1 knapsack), against the search; 60 heights of each set")]
    public void No_stack_has_a_block_too_many(string name)
    {
        var set = SlipSets.Of(name).Value;
        const int Tallest = 130_000;
        var least = new byte[Tallest + 1];
        Array.Fill(least, byte.MaxValue);
        least[0] = 0;
        foreach (var b in set.Blocks)
            for (var h = Tallest; h >= b; h--)
                if (least[h - b] != byte.MaxValue && least[h - b] + 1 < least[h]) least[h] = (byte)(least[h - b] + 1);
        var chance = new Chance(3);
        for (var i = 0; i < 60; i++)
        {
            var h = i < 10 ? 1 + chance.Below(4000) : 1 + chance.Below(Tallest);
            var found = Stacks.Fewest(set.Blocks, h);
            if (least[h] > Stacks.MostBlocks) Assert.Null(found);
            else
            {
                Assert.Equal(least[h], found!.Value.Length);
                Assert.Equal(h, found.Value.Sum());
            }
        }
    }

    [Theory]
    [InlineData(27, 5, 2.270)]
    [InlineData(18, 5, 1.545)]
    [InlineData(30, 5, 2.5)]
    [InlineData(60, 5, 4.3301)]
    [InlineData(23 + 41 / 60.0, 5, 2.0084)]
    [Truth(Grade.Published, "worked sine bars of public lessons: 5 in bar at 27°, 18°, 30°, 60°, 23° 41′, as printed there")]
    public void Published_sine_bars_come_out(double degrees, double bar, double height)
    {
        var set = SineBar.Set(degrees * Degree, bar * In, SlipSets.Of("e81").Value).Value;
        // 27° and 18° are printed to a thou.
        Assert.InRange(set.Exact / In - height, -0.0006, 0.0006);
        Assert.InRange(set.Stack.Height.Value / In - set.Exact / In, -0.00005001, 0.00005001);
        Assert.InRange(set.Angle.Value - degrees * Degree, -0.00006 / bar / Math.Cos(degrees * Degree), 0.00006 / bar / Math.Cos(degrees * Degree));
    }

    [Fact]
    [Truth(Grade.Published, "dθ = dH/(L cos θ): a stack 0.0001 in out turns a 5 in bar by 0.00132° at 30° and 0.00229° at 60° (a public workshop forum)")]
    public void The_spread_of_the_angle_grows_with_it()
    {
        foreach (var (degrees, turned) in new[] { (30.0, 0.00132), (60.0, 0.00229) })
        {
            var set = SineBar.Set(degrees * Degree, 5 * In, SlipSets.Of("e81").Value, barStd: 0).Value;
            var per = set.Angle.Std / set.Stack.Height.Std;
            Assert.InRange(per * 0.0001 * In / Degree / turned, 0.99, 1.01);
        }
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "numeric derivative of asin(h/L) by h and L, combined in quadrature")]
    public void The_bars_own_spread_is_counted()
    {
        var set = SineBar.Set(40 * Degree, 100, SlipSets.Of("m88").Value, barStd: 0.004).Value;
        var h = set.Stack.Height;
        double By(double dh, double dl) => Math.Asin((h.Value + dh) / (100 + dl));
        var expected = Math.Sqrt(Math.Pow((By(1e-5, 0) - By(-1e-5, 0)) / 2e-5 * h.Std, 2) + Math.Pow((By(0, 1e-5) - By(0, -1e-5)) / 2e-5 * 0.004, 2));
        Assert.Equal(1, set.Angle.Std / expected, 6);
    }

    [Fact]
    [Truth(Grade.Published, "limits of grade 1 by the public table of DIN 861: 0.4 µm at 50 mm, 0.2 at 10 and under, even within them (JCGM 100, 4.3.7)")]
    public void The_spread_of_a_stack_follows_from_the_grade()
    {
        var stack = Stacks.Find(SlipSets.Of("m88").Value, 57.005, "1").Value;
        Assert.Equal([50, 6, 1.005], stack.Blocks.Select(b => Math.Round(b, 9)));
        Assert.Equal(Math.Sqrt((0.4 * 0.4 + 0.2 * 0.2 + 0.2 * 0.2) / 3) / 1000, stack.Height.Std, 12);
    }

    [Fact]
    [Truth(Grade.Property, "unreachable heights are refused with the nearest on each side, each of which the set makes")]
    public void What_cannot_be_stacked_is_refused_with_the_nearest()
    {
        var set = SlipSets.Of("m46").Value;
        var refused = Stacks.Find(set, 0.7).Refusal!.Sentence;
        Assert.Contains("1 mm", refused);
        var between = Stacks.Find(set, 1.953).Refusal!.Sentence;
        Assert.Contains("1.9 mm and 2 mm", between);
        Assert.False(Stacks.Find(set, 2000).Ok);
        Assert.Contains("grade", Stacks.Find(set, 5, "9").Refusal!.Sentence);
        Assert.Contains("wear", Stacks.Find(set, 50, "1", 0.7777).Refusal!.Sentence);
    }

    [Theory]
    [InlineData(30, 0)]
    [InlineData(50, 1)]
    [InlineData(70, 1)]
    [Truth(Grade.CommonPractice, "a sine bar is not used past 45° without need; past 60° less still")]
    public void Steep_bars_are_cautioned(double degrees, int cautions) =>
        Assert.Equal(cautions, SineBar.Set(degrees * Degree, 100, SlipSets.Of("m112").Value).Value.Cautions.Length);

    [Theory]
    [InlineData(0, 100)]
    [InlineData(88, 100)]
    [InlineData(30, 5)]
    [Truth(Grade.Property, "angles and bars out of range are refused")]
    public void Angles_out_of_range_are_refused(double degrees, double bar) => Assert.False(SineBar.Set(degrees * Degree, bar, SlipSets.Of("m88").Value).Ok);
}
