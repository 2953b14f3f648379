using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.FrontOffice.CardJob;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.FrontOffice.DrawPart;
using WitnessMark.FrontOffice.Forecast;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Stores;
using WitnessMark.Trade;

namespace WitnessMark.Tests.FrontOffice.Slices;

/// <summary>One part, the whole road, on the demonstration's readings.</summary>
public class RoadTests
{
    static readonly DateTimeOffset Now = new(2026, 11, 25, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_misread_reading_of_the_plate_is_found_and_set_aside()
    {
        var measured = Measured("dynamo-plate");
        var doubtful = Assert.Single(measured.Plan.Doubts.Indices);
        var reading = measured.Sample.Readings[doubtful];
        Assert.Equal(["H3", "H6"], new[] { reading.From, reading.To }.Order());
        Assert.True(measured.Plan.Believed.Global.Passes);
    }

    [Fact]
    public void The_borrowed_bracket_is_loose_and_the_next_reading_holds_it()
    {
        var measured = Measured("headlamp-bracket");
        Assert.Equal(["H6"], measured.Plan.Loose.SelectMany(g => g.Ids));
        Assert.False(measured.Next!.Enough);
        Assert.All(measured.Next.Readings, n => Assert.Contains("H6", new[] { n.From, n.To }));
    }

    [Fact]
    public void The_plate_is_drawn_with_made_to_sizes_beside_measured_ones()
    {
        var drawn = Drawn("dynamo-plate");
        Assert.Equal("5/16 in", drawn.MadeTo.OfFeature("H4"));
        Assert.Equal(8, drawn.Part.Holes.Length);
        Assert.Contains(drawn.Drawing.Dimensions, d => d.MadeTo is not null);
        Assert.Contains("Doubtful", Assert.Single(drawn.Cautions));
    }

    [Fact]
    public void Files_come_out_whole_and_the_same_each_time()
    {
        var (first, second) = (Drawn("lamp-bracket").Files(PrintRoom.Paper.PaperSize.A4, Now).ToList(), Drawn("lamp-bracket").Files(PrintRoom.Paper.PaperSize.A4, Now).ToList());
        Assert.Equal(first.Select(f => f.FileName), first.Select(f => f.FileName).Distinct());
        Assert.All(first.Zip(second), p => Assert.Equal(p.First.Bytes, p.Second.Bytes));
        Assert.All(first.Where(f => f.FileName.EndsWith(".pdf", StringComparison.Ordinal)), f => Assert.True(f.Bytes.AsSpan().StartsWith("%PDF-"u8)));
    }

    [Fact]
    [Truth(Grade.Property, "the metal of a blank is that of its faces and bend strips, less its openings")]
    public void The_brackets_blank_balances_and_its_card_carries_its_figures()
    {
        var cut = Cut();
        Assert.Equal(0, cut.Blank.AreaImbalance, 1e-9);
        var card = CardJob.Run(new("Bracket", "Q12", cut.Part, cut.Tree.Thickness, Materials.Find("DC01")!, Shop.Usual) { Bends = cut.Blank.BendLines });
        Assert.Equal(cut.Blank.Area, card.Facts.Area, 6);
        Assert.Equal(2, card.Facts.Bends.Length);
        Assert.Equal(5, card.Facts.Holes.Sum(h => h.Count));
        Assert.NotEmpty(card.Cautions);
    }

    static PlanForecast Forecast(params Job[] jobs) =>
        ForecastPlan.Run(new(new PlanInput([.. jobs], [], Means.Usual(Guid.Empty), new(2031, 5, 5)) { Pace = new SharedPace(0.25, 0) }, 1) { Futures = 4000 }).Forecast;

    [Fact]
    public void A_job_is_counted_in_the_forecast()
    {
        var cut = Cut();
        var card = CardJob.Run(new("Bracket", "Q12", cut.Part, cut.Tree.Thickness, Materials.Find("DC01")!, Shop.Usual) { Bends = cut.Blank.BendLines });
        var bracket = new Part(Guid.NewGuid(), Guid.NewGuid(), "Bracket", "Q12", Hand.None, 1, "", null);
        var one = Forecast(card.AsJob(Guid.NewGuid(), Guid.NewGuid(), bracket));
        var two = Forecast(card.AsJob(Guid.NewGuid(), Guid.NewGuid(), bracket), card.AsJob(Guid.NewGuid(), Guid.NewGuid(), bracket));
        Assert.Equal((1, 2), (one.Bars.Length, two.Bars.Length));
        Assert.InRange(one.Hours.P50.Value, card.Card.Hours.Low, card.Card.Hours.High);
        Assert.InRange(two.Hours.Mean.Value / one.Hours.Mean.Value, 1.9, 2.1);
    }

    [Fact]
    public void A_sample_that_hardly_anything_ties_is_refused_instead_of_taking_minutes()
    {
        var sheet = "feature,kind\n" + string.Concat(Enumerable.Range(0, 1500).Select(i => $"H{i},hole\n"));
        var refused = Assert.Throws<Maths.RefusedException>(() => WitnessMark.FrontOffice.MeasureSample.MeasureSample.Run(new(SampleFile.Read(sheet).Value)));
        Assert.Contains("4500 places and sizes are unknown; take at least 3900 more", refused.Message);
    }

    [Theory]
    [InlineData("din6935")]
    [InlineData("k=0.4")]
    public void Allowances_are_named(string method) => Assert.True(BendMethods.Read(method).Ok);

    [Theory]
    [InlineData("k=0")]
    [InlineData("k=1.5")]
    [InlineData("guess")]
    public void Other_allowances_are_refused(string method) => Assert.Contains("write din6935", BendMethods.Read(method).Refusal?.Sentence);

    static MeasureResult Measured(string name) =>
        WitnessMark.FrontOffice.MeasureSample.MeasureSample.Run(new(SampleFile.Read(Demo.Bytes($"samples/{name}.csv")).Value));

    static DrawResult Drawn(string name)
    {
        var measured = Measured(name);
        return DrawPart.Run(new(measured.Sample, measured.Plan, new TitleFields(name, "Q12")) { Prior = WitnessMark.FrontOffice.MakeToSize.Origins.Named("british")! });
    }

    static CutResult Cut()
    {
        var tree = BracketFile.Read(Demo.Bytes("samples/lamp-bracket.json")).Value;
        return CutBlank.Run(new(tree, new TitleFields(tree.Title, "Q12-4221")));
    }
}
