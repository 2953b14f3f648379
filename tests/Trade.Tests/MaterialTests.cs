using WitnessMark.Tests;

namespace WitnessMark.Trade.Tests;

public class MaterialTests
{
    [Fact, Truth(Grade.Published, "steelstrip.co.uk, EN 10139: DC01 yield 280 max, UTS 270 to 410, A80 28 min; DC04 240 max, 270 to 370, 34 min")]
    public void Cold_rolled_sheet_has_the_standard_s_limits()
    {
        var dc01 = Materials.Find("DC01")!;
        Assert.Equal((280.0, 270.0, 410.0, 28.0), (dc01.Yield.High!.Value, dc01.Ultimate.Low!.Value, dc01.Ultimate.High!.Value, dc01.Elongation.Low!.Value));
        Assert.Equal(FigureGrade.Read, dc01.Grade);
        var dc04 = Materials.Find("DC04")!;
        Assert.Equal((240.0, 370.0, 34.0), (dc04.Yield.High!.Value, dc04.Ultimate.High!.Value, dc04.Elongation.Low!.Value));
    }

    [Fact, Truth(Grade.Published, "MakeItFrom, ASTM A228: E 190 GPa, UTS 2450 MPa, density 7.8 g/cc, expansion 12e-6 per K")]
    public void Music_wire()
    {
        var wire = Materials.Find("Music wire")!;
        Assert.Equal((190_000.0, 2450.0, 7800.0, 12e-6), (wire.E.Typical!.Value, wire.Ultimate.Typical!.Value, wire.Density, wire.Expansion.Typical!.Value));
    }

    [Fact, Truth(Grade.Property, "ranges run upward; yield does not pass the ultimate strength; a cubic metre of metal is 2.5 to 9 t")]
    public void Materials_are_sane()
    {
        Assert.Equal(Materials.All.Length, Materials.All.DistinctBy(m => m.Name).Count());
        Assert.All(Materials.All, m =>
        {
            Assert.All((PropertyRange[])[m.E, m.Yield, m.Ultimate, m.Elongation, m.Expansion], r => Assert.False(r.Low > r.High, m.Name));
            Assert.True(m.Ultimate.Low > 0 && !(m.Yield.Low > m.Ultimate.Low), m.Name);
            Assert.InRange(m.Density, 2500, 9000);
            Assert.InRange(m.E.Low!.Value, 60_000, 220_000);
            Assert.InRange(m.Expansion.Typical!.Value, 9e-6, 25e-6);
            Assert.InRange(m.Poisson, 0.2, 0.35);
        });
    }

    [Fact, Truth(Grade.CommonPractice, "20 SWG (0.914 mm) steel is replaced by 0.9 or 1.0 mm sheet")]
    public void Stock_on_each_side()
    {
        var (thinner, thicker) = SheetStock.Around("steel", Gauges.Find(GaugeSeries.Swg, "20")!.Mm);
        Assert.Equal((0.9, 1.0), (thinner!.Mm, thicker!.Mm));
        Assert.Null(SheetStock.Around("steel", 20).Thicker);
        Assert.All(SheetStock.All.GroupBy(s => s.Series), g => Assert.Equal(g.OrderBy(s => s.Mm), g));
    }

    [Fact, Truth(Grade.Published, "ISO 286 restated: 40 H7/p6 holds 1 to 42 micrometres of interference")]
    public void A_press_fit()
    {
        var fit = Fits.Of(40, "H7", "p6").Value;
        Assert.Equal(-0.042, fit.LeastClearance, 9);
        Assert.Equal(-0.001, fit.MostClearance, 9);
    }

    [Fact, Truth(Grade.Published, "ISO 286 restated: IT7 is 12 15 18 21 25 30 30 35 35 micrometres over the ranges from 3 to 120 mm; H starts at nought")]
    public void Grades_are_the_same_for_hole_and_shaft()
    {
        double[] it7 = [12, 15, 18, 21, 25, 30, 30, 35, 35];
        Assert.Equal(it7, Fits.All.Where(l => l.Class == "H7").Select(l => Math.Round((l.Upper - l.Lower) * 1000)));
        Assert.Equal(it7, Fits.All.Where(l => l.Class == "f7").Select(l => Math.Round((l.Upper - l.Lower) * 1000)));
        foreach (var six in (string[])["h6", "g6", "k6", "n6", "p6", "r6", "s6"])
            Assert.Equal(
                Fits.All.Where(l => l.Class == "H6").Select(l => Math.Round((l.Upper - l.Lower) * 1000)),
                Fits.All.Where(l => l.Class == six).Select(l => Math.Round((l.Upper - l.Lower) * 1000)));
    }

    [Theory, Truth(Grade.CommonPractice, "out of the table is said, not guessed")]
    [InlineData(3, "H7", "p6")]
    [InlineData(121, "H7", "p6")]
    [InlineData(double.NaN, "H7", "p6")]
    [InlineData(40, "H9", "p6")]
    [InlineData(40, "p6", "H7")]
    [InlineData(40, "H7", "H7")]
    public void Fits_outside_the_table_are_refused(double mm, string hole, string shaft) => Assert.NotNull(Fits.Of(mm, hole, shaft).Refusal);

    [Fact, Truth(Grade.Property, "every source is named once and used; a figure from memory says so")]
    public void Every_source_is_listed_once_and_used()
    {
        Assert.Equal(Sources.All.Length, Sources.All.DistinctBy(s => s.Id).Count());
        var used = Threads.All.SelectMany(t => (Source?[])[t.Source, t.TapDrillSource, t.Form.Source])
            .Concat(Gauges.All.Concat(Drills.All).Concat(SheetStock.All).Select(s => s.Source))
            .Concat(Materials.All.SelectMany(m => (Source[])[m.Source, m.LimitsSource]))
            .Concat(Fits.All.Select(l => l.Source))
            .Concat(Currencies.All.Select(c => c.Source))
            .Concat(SlipSets.All.Select(s => s.Source)).Append(SlipSets.LimitsSource)
            .Concat(MetricSizes.Preferred(PreferredSeries.R5, 1, 2).Select(s => s.Source))
            .OfType<Source>().ToHashSet();
        used.UnionWith([Sources.Computed, Fractions.UpTo(1)[0].Source]);
        Assert.Equal(Sources.All.Select(s => s.Id).Order(), used.Select(s => s.Id).Order());
        Assert.Equal(FigureGrade.Memory, Sources.Of("memory").Grade);
    }
}
