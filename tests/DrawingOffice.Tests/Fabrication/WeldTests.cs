using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Fabrication;

public class WeldTests
{
    static readonly ImmutableArray<WeldLine> Box =
    [
        new("north", new(0, 100, 0), new(140, 100, 0)), new("south", new(0, 0, 0), new(140, 0, 0)),
        new("west", new(0, 0, 0), new(0, 100, 0)), new("rise", new(140, 0, 0), new(140, 0, 25)),
    ];

    [Theory]
    [InlineData(1.0)]
    [InlineData(1.6)]
    [InlineData(3.0)]
    [Truth(Grade.Property, "every mm of every seam is run once, every run lies between two tacks, and tacks come ends first and then by halves")]
    public void Every_seam_is_tacked_and_run_whole(double thickness)
    {
        var order = Sequence.Of(Box, thickness);
        for (var s = 0; s < Box.Length; s++)
        {
            var tacks = order.Tacks.Where(t => t.Seam == s).Select(t => t.From).ToArray();
            Assert.Equal([0, Box[s].Length], tacks[..2].Order());
            var runs = order.Runs.Where(r => r.Seam == s).OrderBy(r => r.To).ToArray();
            Assert.Equal(0, runs[0].To, 9);
            Assert.Equal(Box[s].Length, runs[^1].From, 9);
            for (var i = 1; i < runs.Length; i++) Assert.Equal(runs[i - 1].From, runs[i].To, 9);
            Assert.All(runs, r => Assert.True(r.From > r.To && r.From - r.To <= Sequence.TackPitch(thickness) + 1e-9));
            Assert.All(runs, r => Assert.True(tacks.Any(t => Math.Abs(t - r.From) < 1e-9) && tacks.Any(t => Math.Abs(t - r.To) < 1e-9)));
        }
    }

    [Fact]
    [Truth(Grade.CommonPractice, "skip welding: no run begins beside the one just made while one farther off is left; opposite sides take turns")]
    public void Heat_is_kept_apart()
    {
        var order = Sequence.Of(Box, 1);
        var middles = order.Runs.Select(r => Box[r.Seam].At((r.From + r.To) / 2)).ToArray();
        // Of two long opposite seams the first run of one is followed by a run of another.
        Assert.NotEqual(order.Runs[0].Seam, order.Runs[1].Seam);
        var steps = Enumerable.Range(1, middles.Length - 1).Select(i => middles[i].DistanceTo(middles[i - 1])).ToArray();
        var inTurn = Box.SelectMany((b, s) => order.Runs.Where(r => r.Seam == s).OrderBy(r => r.To).Select(r => b.At((r.From + r.To) / 2))).ToArray();
        var plain = Enumerable.Range(1, inTurn.Length - 1).Select(i => inTurn[i].DistanceTo(inTurn[i - 1])).ToArray();
        Assert.True(steps.Average() > 2 * plain.Average(), $"{steps.Average():0} and {plain.Average():0} mm");
        Assert.True(order.Tacks[0].Seam != order.Tacks[1].Seam);
    }

    [Theory]
    [InlineData(1, 5)]
    [InlineData(0.64, 4)]
    [InlineData(4, 10)]
    [Truth(Grade.Published, "5·√t for the nugget of a spot weld, two public pages; two sheets of 1 mm give 5 mm")]
    public void A_spot_is_five_roots_of_the_sheet(double t, double nugget) => Assert.Equal(nugget, Plugs.Nugget(t), 12);

    [Fact]
    [Truth(Grade.Published, "D1.1 as restated on public pages: least hole = thickness + 5/16 in, middles 4 holes apart; D1.3: 0.7 d − 1.5 t, at least 3/8 in; body repair: 8 mm, as many as the works had (a trade body's pages)")]
    public void Each_rule_gives_its_own_hole()
    {
        var row = new SpotRow("row", "lip", "sill", 1.0, 8, 280);
        var body = Plugs.For(row).Value;
        Assert.Equal((PlugRule.Body, 8, 8.0), (body.Rule, body.Count, body.Hole));
        Assert.Equal(40, body.Pitch, 12);
        Assert.Contains("body", body.Words, StringComparison.OrdinalIgnoreCase);
        var sheet = Plugs.For(row, PlugRule.Sheet).Value;
        Assert.InRange(Plugs.Fused(sheet.Hole, 1), 9.525, 9.525 + 0.35);
        Assert.True(sheet.PlugArea >= sheet.SpotArea);
        Assert.True(sheet.Count < 8);
        var plate = Plugs.For(row with { Thinner = 6 }).Value;
        Assert.Equal(PlugRule.Plate, plate.Rule);
        Assert.InRange(plate.Hole, 6 + 7.9375, 6 + 7.9375 + 0.5);
        Assert.Contains("plate", plate.Words);
        Assert.Contains("body practice ends", Plugs.For(row with { Thinner = 4 }, PlugRule.Body).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "areas by hand: spots 8·π/4·5² mm²; a hole of 8 mm in 1 mm fuses 0.7·8 − 1.5 = 4.1 mm, so 12 plugs for 8 spots; said as a caution")]
    public void Where_plugs_fuse_less_than_spots_it_is_said()
    {
        var body = Plugs.For(new("row", "lip", "sill", 1.0, 8, 280)).Value;
        Assert.Equal(8 * Math.PI / 4 * 25, body.SpotArea, 9);
        Assert.Equal(12, body.Cautions.Single().Limit);
        Assert.Contains("engineer", body.Cautions.Single().Words);
    }

    [Theory]
    [InlineData(1.2, 50, 10, "Of 50 plugs 1 fits")]
    [InlineData(1.2, 20, 100, "Of 20 plugs 7 fit")]
    [Truth(Grade.CommonPractice, "holes of 8 mm at 16 mm: floor(row / 16) + 1 stand in a row")]
    public void A_crowded_row_says_how_many_plugs_fit(double thinner, int spots, double row, string told)
    {
        Assert.Contains(Plugs.For(new("row", "a", "b", thinner, spots, row)).Value.Cautions, c => c.Words.Contains(told));
        Assert.DoesNotContain(Plugs.For(new("row", "a", "b", thinner, spots, 16 * spots)).Value.Cautions, c => c.Words.Contains("fit"));
    }

    [Theory]
    [InlineData(0.2, 4, 100)]
    [InlineData(1, 0, 100)]
    [InlineData(1, 4, 0)]
    [Truth(Grade.Property, "figures out of range are refused")]
    public void Senseless_rows_are_refused(double thinner, int spots, double row) => Assert.False(Plugs.For(new("row", "a", "b", thinner, spots, row)).Ok);
}
