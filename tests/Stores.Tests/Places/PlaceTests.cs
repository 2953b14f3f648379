using WitnessMark.Stores.Places;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Places;

public class PlaceTests
{
    static readonly Guid Van = Guid.NewGuid(), Part = Guid.NewGuid();
    static readonly Place Shed = new(Guid.NewGuid(), Van, PlaceKind.Building, "shed", null, "");
    static readonly Place Shelf = new(Guid.NewGuid(), Van, PlaceKind.Shelf, "shelf 2", Shed.Id, "");
    static readonly Place Bin = new(Guid.NewGuid(), Van, PlaceKind.Bin, "B3", Shelf.Id, "");

    static Moved Put(Guid? place, int hour, string note = "") => new(Guid.NewGuid(), Van, Part, place, note, new(2031, 5, 1, hour, 0, 0, TimeSpan.Zero), "phone");

    static WhereIs Told(params Moved[] moves) => new([Shed, Shelf, Bin], moves);

    [Fact]
    [Truth(Grade.Property, "the last by the clock counts, whatever the order of arrival; of one time the later arrival")]
    public void The_last_move_counts()
    {
        Assert.Equal("shed, shelf 2, B3 (put there on 2031-05-01; in a jar).", Told(Put(Bin.Id, 9, "in a jar"), Put(Shed.Id, 8)).Words(Part));
        Assert.Equal("shed (put there on 2031-05-01).", Told(Put(Bin.Id, 9), Put(Shed.Id, 9)).Words(Part));
        Assert.StartsWith("Taken out on 2031-05-01", Told(Put(Bin.Id, 8), Put(null, 9)).Words(Part));
        Assert.Equal("Nobody has said where it is.", Told().Words(Part));
        Assert.Contains("no longer listed", Told(Put(Guid.NewGuid(), 9)).Words(Part));
    }

    [Fact]
    [Truth(Grade.Property, "what lies in a bin lies on its shelf and in its shed")]
    public void A_place_holds_what_its_inner_places_hold()
    {
        var told = Told(Put(Bin.Id, 9));
        Assert.All(new[] { Shed, Shelf, Bin }, p => Assert.Equal([Part], told.PartsIn(p.Id)));
        Assert.Empty(Told(Put(Shed.Id, 9)).PartsIn(Bin.Id));
    }

    [Fact]
    [Truth(Grade.Property, "places inside each other, or in none that is listed, are refused in words")]
    public void Places_do_not_lie_inside_each_other()
    {
        var told = Told();
        Assert.Null(told.WrongIn(Bin));
        Assert.Contains("shed, which is in B3, which is in shelf 2, which is in shed", told.WrongIn(Shed with { Inside = Bin.Id })!.Sentence);
        Assert.Contains("choose a place that is listed", told.WrongIn(Bin with { Inside = Guid.NewGuid() })!.Sentence);
        Assert.Contains("inside itself", (Bin with { Inside = Bin.Id }).Wrong()!.Sentence);
        // Even rows that slipped through are gone round once.
        Assert.Equal(3, new WhereIs([Shed with { Inside = Bin.Id }, Shelf, Bin], []).Path(Bin.Id).Length);
    }
}
