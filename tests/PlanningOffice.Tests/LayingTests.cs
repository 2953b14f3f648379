using CsCheck;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests;

public sealed class LayingTests
{
    static readonly StockList One = StockList.Usual with { Sheets = [new("1000 × 500", 1000, 500)], Gap = 0 };

    [Theory]
    [InlineData(250, 250, 8)]
    [InlineData(500, 200, 5)]
    [InlineData(300, 200, 8)] // 2 × 3 straight on 1000 × 400 leaves room; two turned columns of 300 fill it better
    [Truth(Grade.Property, "counted by hand on squared paper; 1000·500/(w·h) is the ceiling")]
    public void A_sheet_holds_what_a_person_can_lay(double w, double h, int count) =>
        Assert.Equal(count, Laying.Choose(w, h, w * h, 1000, One)!.OnOne.Length);

    [Fact]
    [Truth(Grade.Property, "one piece of exactly the sheet's size fits, a hair more does not")]
    public void The_sheet_itself_fits_and_a_hair_more_does_not()
    {
        Assert.Equal(0, Laying.Choose(1000, 500, 500_000, 1, One)!.Waste, 12);
        Assert.NotNull(Laying.Choose(500, 1000, 500_000, 1, One));
        Assert.Null(Laying.Choose(1000.01, 500, 500_000, 1, One));
    }

    [Fact]
    [Truth(Grade.Property, "pieces lie inside the sheet, keep the gap, and the waste balances the area bought")]
    public void Laid_pieces_keep_apart_and_inside() =>
        Gen.Select(Gen.Double[5, 900], Gen.Double[5, 900], Gen.Int[1, 60]).Sample((w, h, quantity) =>
        {
            var area = 0.8 * w * h;
            var laid = Laying.Choose(w, h, area, quantity, StockList.Usual)!;
            var gap = StockList.Usual.Gap - 1e-6;
            foreach (var (p, i) in laid.OnOne.Select((p, i) => (p, i)))
            {
                Assert.True(p.X >= 0 && p.Y >= 0 && p.X + p.Width <= laid.Sheet.Width + 1e-6 && p.Y + p.Height <= laid.Sheet.Height + 1e-6);
                Assert.True((p.Width, p.Height) == (w, h) || (p.Width, p.Height) == (h, w));
                foreach (var q in laid.OnOne.Skip(i + 1))
                    Assert.True(p.X + p.Width + gap <= q.X || q.X + q.Width + gap <= p.X || p.Y + p.Height + gap <= q.Y || q.Y + q.Height + gap <= p.Y);
            }
            Assert.True(laid.Sheets * laid.OnOne.Length >= quantity && (laid.Sheets - 1) * laid.OnOne.Length < quantity);
            Assert.Equal(quantity * area, (1 - laid.Waste) * laid.Sheets * laid.Sheet.Area, 3);
        }, iter: 300, threads: 1);

    [Fact]
    [Truth(Grade.Property, "no other size on the list takes less metal")]
    public void The_least_metal_is_bought() =>
        Gen.Select(Gen.Double[20, 600], Gen.Double[20, 600], Gen.Int[1, 40]).Sample((w, h, quantity) =>
        {
            var chosen = Laying.Choose(w, h, w * h, quantity, StockList.Usual)!;
            foreach (var sheet in StockList.Usual.Sheets)
                if (Laying.Choose(w, h, w * h, quantity, StockList.Usual with { Sheets = [sheet] }) is { } other)
                    Assert.True(chosen.Sheets * chosen.Sheet.Area <= other.Sheets * other.Sheet.Area);
        }, iter: 100, threads: 1);
}
