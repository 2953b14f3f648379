using WitnessMark.Stores.Orders;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Orders;

[Truth(Grade.Property, "what is due first comes first; what has gone back is gone; overdue and unread is told apart from overdue and read")]
public class LenderTests
{
    static readonly DateOnly Day = new(2031, 5, 10);

    static PartSample Lent(string title, string lender, int due) =>
        new(Guid.NewGuid(), Guid.NewGuid(), title, SampleOrigin.Borrowed, new(lender, new(2031, 4, 1), new(2031, 5, due)), []);

    static readonly PartSample Read = Lent("read", "Ada", 8), Unread = Lent("unread", "ada ", 9), Later = Lent("later", "Ada", 20), Ben = Lent("bens", "Ben", 5), Own = Lent("own", "", 1) with { Origin = SampleOrigin.TakenOff, Loan = null };

    static System.Collections.Immutable.ImmutableArray<LenderView> Views(params GivenBack[] back)
    {
        PartSample[] all = [Later, Unread, Read, Ben, Own];
        return Lenders.Of(all, back, part => all.Single(s => s.PartId == part).Title, id => id == Read.Id ? 0 : 2);
    }

    [Fact]
    public void A_lender_is_told_what_to_do()
    {
        var views = Views();
        Assert.Equal(["Ben", "Ada"], views.Select(v => v.Lender));
        Assert.Equal(2, views[1].Overdue(Day));
        Assert.Equal("Send back now, overdue and all read: read. Overdue with readings still missing: unread. Take them, or ask for more time. Next to measure: later, due back on 2031-05-20, 2 readings missing.", views[1].Words(Day));
        Assert.Equal("All read, can go back: read. Next to measure: unread, due back on 2031-05-09, 2 readings missing.", views[1].Words(new(2031, 5, 1)));
    }

    [Fact]
    public void What_went_back_is_gone()
    {
        var back = new GivenBack(Guid.NewGuid(), Guid.NewGuid(), Ben.Id, "", [], new(2031, 5, 2, 0, 0, 0, TimeSpan.Zero), "phone");
        Assert.Null(back.Wrong());
        Assert.Equal(["Ada"], Views(back).Select(v => v.Lender));
        Assert.NotNull((back with { SampleId = Guid.Empty }).Wrong());
        Assert.Contains("must not be before the day it was lent", Check.Of(Ben with { Loan = new("Ben", Day, Day.AddDays(-1)) })!.Sentence);
    }
}
