using System.Diagnostics;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent;

/// <summary>Nominal sizes are the trade's; the worn readings are ours.</summary>
public class IdentifyTests
{
    static Measured Size(double mm, double std = 0.021, Condition condition = Condition.Unknown, string item = "") =>
        new(Facet.Size, new Uncertain(mm, std), condition, item);

    static Measured Flank(double degrees, double std = 1) =>
        new(Facet.Flank, new Uncertain(degrees * Math.PI / 180, std * Math.PI / 180));

    static Measured Tpi(double threadsPerInch) => Measured.PitchByGauge(25.4 / threadsPerInch, 12);

    [Fact]
    [Truth(Grade.Published, "BS 84 as restated by TR Fastenings and Unik Gauges: 3/8 in, 16 TPI, 55°")]
    public void Worn_British_stud_is_named_by_its_diameter_pitch_and_angle()
    {
        var told = Identify.One(Question.Of(Subject.ExternalThread, Size(9.34), Tpi(16), Flank(55)));
        Assert.Equal("3/8 BSW", told.Best!.Name);
        Assert.True(told.Told, told.Words);
        Assert.Contains(told.Cautions, c => c.Contains("3/8-16 UNC"));
    }

    [Fact]
    [Truth(Grade.Published, "BS 84 and BS 811 as restated in public tables: 1/4 in at 26 TPI in both, 55° against 60°")]
    public void Quarter_inch_at_26_asks_for_the_flank_angle()
    {
        var question = Question.Of(Subject.ExternalThread, Size(6.22), Tpi(26));
        var told = Identify.One(question);
        Assert.False(told.Told);
        var doubt = told.Doubts.Single(d => d.Second.Contains("cycle"));
        Assert.Equal("1/4 BSF", doubt.First);
        var decider = doubt.Deciders.Single(d => d.Facet == Facet.Flank);
        Assert.Equal(5 * Math.PI / 180, decider.Difference, 1e-9);
        Assert.Contains("flank angle", decider.Words);

        Assert.Equal("1/4-26 cycle", Identify.One(question with { Measurements = question.Measurements.Add(Flank(60)) }).Best!.Name);
        Assert.Equal("1/4 BSF", Identify.One(question with { Measurements = question.Measurements.Add(Flank(55)) }).Best!.Name);
    }

    [Fact]
    [Truth(Grade.Published, "BA and metric sizes as restated in public tables: 0 BA and M6 are both 6.0 × 1.0 mm, 47.5° against 60°")]
    public void Nought_BA_and_M6_differ_by_their_angle_alone()
    {
        var question = Question.Of(Subject.ExternalThread, Size(5.88), Measured.PitchOver(10, new Uncertain(10.0, 0.021)));
        var told = Identify.One(question);
        Assert.Equal(["0 BA", "M6"], told.Ranked.Take(2).Select(r => r.Name).Order());
        Assert.Contains(told.Doubts.Single().Deciders, d => d.Facet == Facet.Flank);
        Assert.Equal("0 BA", Identify.One(question, OriginPrior.BritishToAbout1950).Best!.Name);
        Assert.Equal("M6", Identify.One(question, OriginPrior.ContinentalOrJapanese).Best!.Name);
    }

    [Fact]
    [Truth(Grade.Property, "Wear shrinks a pin and grows a hole: the nearer size on the wrong side is not the answer")]
    public void Wear_goes_one_way()
    {
        // 0.20 mm over 5/16, 0.19 below 21/64: nearest in plain distance to 21/64.
        var reading = 7.9375 + 0.21;
        Assert.Equal("5/16 in", Identify.One(Question.Of(Subject.Hole, Size(reading, condition: Condition.Worn)), OriginPrior.BritishToAbout1950).Best!.Name);
        // A pin of the same size cannot have grown.
        Assert.NotEqual("5/16 in", Identify.One(Question.Of(Subject.Pin, Size(reading, condition: Condition.Worn)), OriginPrior.BritishToAbout1950).Best!.Name);
        var pin = Identify.One(Question.Of(Subject.Pin, Size(9.525 - 0.11, condition: Condition.Worn)), OriginPrior.BritishToAbout1950);
        Assert.Equal("3/8 in", pin.Best!.Name);
        Assert.Equal(0.11 - 0.015, pin.Best.Wear[0].Value, 2 * pin.Best.Wear[0].Std);
    }

    [Fact]
    [Truth(Grade.Published, "BS 3737 SWG as restated in public tables: 18 SWG is 0.048 in, 1.219 mm; 20 SWG 0.036 in, 0.914 mm")]
    public void Rusted_sheet_was_thicker_and_paint_hid_it()
    {
        var bare = Identify.One(Question.Of(Subject.Sheet, Size(1.13, 0.01, Condition.Worn)), OriginPrior.BritishToAbout1950);
        Assert.Contains(bare.Ranked.Take(2), r => r.Name == "18 SWG");
        var painted = Identify.One(Question.Of(Subject.Sheet, Size(1.09, 0.01, Condition.New) with { Coat = Coat.Painted }), OriginPrior.BritishToAbout1950);
        Assert.Equal("20 SWG", painted.Best!.Name);
    }

    [Fact]
    [Truth(Grade.Published, "BG of 1914 and the inch: 16 BG is 0.0625 in, which is 1/16 in")]
    public void Two_names_for_one_thickness_are_one_answer()
    {
        var told = Identify.One(Question.Of(Subject.Sheet, Size(1.585, 0.005, Condition.New)), OriginPrior.BritishToAbout1950);
        Assert.Single(told.Ranked, r => r.AlsoCalled.Add(r.Name).Order().SequenceEqual(["1/16 in", "16 BG"]));
    }

    [Fact]
    [Truth(Grade.Property, "Equal holes worn differently: the least worn one tells")]
    public void Equal_holes_tell_more_than_one()
    {
        var one = Identify.One(Question.Of(Subject.Hole, Size(8.22)));
        var four = Identify.One(Question.Of(Subject.Hole, Size(8.22, item: "a"), Size(8.02, item: "b"), Size(8.06, item: "c"), Size(7.98, item: "d")));
        double Of(MadeTo told) => told.Ranked.Where(r => r.Name == "5/16 in").Sum(r => r.Probability);
        Assert.True(Of(four) > 2 * Of(one), $"{Of(four)} against {Of(one)}");
        Assert.Equal(4, four.Best!.Wear.Length);
        Assert.True(four.Best.Wear[0].Value > four.Best.Wear[3].Value + 0.1);
    }

    [Fact]
    [Truth(Grade.Property, "JCGM 100, 4.2: two Gaussian readings of one thing are their mean with the uncertainty over √2")]
    public void Two_readings_of_one_item_are_their_mean()
    {
        var two = Identify.One(Question.Of(Subject.HolePitch, Size(50.85, 0.03), Size(50.73, 0.03)));
        var mean = Identify.One(Question.Of(Subject.HolePitch, Size(50.79, 0.03 / Math.Sqrt(2))));
        foreach (var (a, b) in two.Ranked.Zip(mean.Ranked)) Assert.Equal(b.Probability, a.Probability, 1e-6);
        Assert.Equal(mean.OffList, two.OffList, 1e-6);
    }

    [Fact]
    [Truth(Grade.Property, "Two items have two making errors, and so tell more than two readings of one")]
    public void Two_items_tell_more_than_two_readings_of_one()
    {
        double Best(params Measured[] m) => Identify.One(Question.Of(Subject.HolePitch, m)).Best!.Probability;
        Assert.True(Best(Size(50.8, item: "a"), Size(50.8, item: "b")) > Best(Size(50.8), Size(50.8)) + 0.01);
    }

    [Fact]
    [Truth(Grade.CommonPractice, "A stretched stud has grown in pitch; trade practice is to scrap it")]
    public void A_stretched_stud_is_warned_of()
    {
        bool Warned(double pitch) => Identify.One(Question.Of(Subject.ExternalThread, Size(9.85), new Measured(Facet.Pitch, new Uncertain(pitch, 0.002))))
            is { Best.Name: "M10", Cautions: var said } && said.Any(c => c.Contains("stretched"));
        Assert.True(Warned(1.518));
        Assert.False(Warned(1.503));
    }

    [Fact]
    [Truth(Grade.Property, "A size on no list is said to be so")]
    public void Off_list_is_reported_as_such()
    {
        var told = Identify.One(Question.Of(Subject.ExternalThread, Size(8.6, 0.01, Condition.New), Tpi(22)));
        Assert.True(told.OffList > 0.9, told.Words);
        Assert.StartsWith("Made to none of the listed sizes", told.Words);
        Assert.InRange(told.OffListSize.Value, 8.6, 8.9);
    }

    [Fact]
    [Truth(Grade.Property, "Bayes' rule: evidence of origin multiplies over a family")]
    public void A_family_tells_of_its_origin()
    {
        Question[] british = [.. ((double[])[12.7, 19.05, 25.4 * 1.375, 25.4 * 2.125]).Select(d => Question.Of(Subject.HolePitch, Size(d + 0.03)))];
        var alone = Identify.One(british[0]);
        var family = Identify.Together([.. british]);
        Assert.True(family.Origins.Single(o => o.Name == "metric").Probability < 0.02);
        Assert.True(family.Members[0].Best!.Probability > alone.Best!.Probability);
        Assert.Equal(1, family.Origins.Sum(o => o.Probability), 1e-12);
        Assert.All(family.Members, m => Assert.Equal(1, m.OffList + m.Ranked.Sum(r => r.Probability), 1e-4));
    }

    [Fact]
    [Truth(Grade.Property, "Issue's own limit: one identification below 5 ms once warm")]
    public void One_identification_is_quick()
    {
        var question = Question.Of(Subject.ExternalThread, Size(6.22), Tpi(26), Flank(58));
        var hole = Question.Of(Subject.Hole, Size(8.22, item: "a"), Size(8.02, item: "b"));
        for (var i = 0; i < 50; i++) (_, _) = (Identify.One(question), Identify.One(hole));
        Assert.True(Fastest(question) < 5 && Fastest(hole) < 5, $"{Fastest(question)} ms, {Fastest(hole)} ms");
    }

    // The fastest of a few: the machine may be busy with other things.
    static double Fastest(Question question) => Enumerable.Range(0, 20).Min(_ =>
    {
        var start = Stopwatch.GetTimestamp();
        Identify.One(question);
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    });
}
