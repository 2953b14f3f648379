using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests;

public sealed class SampleTests
{
    static readonly DateOnly Lent = new(2031, 5, 1), Due = new(2031, 6, 1);
    static readonly PartSample Sample = new(Guid.NewGuid(), Guid.NewGuid(), "original", SampleOrigin.Borrowed, new Loan("Aunt Ottilie", Lent, Due),
        [new("inside between holes", "H1", "H6", ""), new("diameter", "H6", "", "")]);

    [Theory]
    [InlineData(2031, 5, 2, 2, "in 30 days; 2 readings are still missing")]
    [InlineData(2031, 5, 31, 1, "goes back tomorrow (2031-06-01); one reading is still missing")]
    [InlineData(2031, 6, 1, 0, "goes back today; nothing on the list")]
    [InlineData(2031, 6, 2, 0, "was due back yesterday")]
    [InlineData(2031, 6, 9, 0, "8 days ago")]
    [Truth(Grade.Property, "days counted on the calendar")]
    public void A_loan_says_when_it_goes_back_and_what_is_missing(int y, int m, int d, int missing, string words) =>
        Assert.Contains(words, Sample.Loan!.Words(new(y, m, d), missing));

    [Fact]
    [Truth(Grade.Property, "a wanted reading is answered in either direction, without regard to case, and by standing readings only")]
    public void Taken_readings_are_no_longer_missing()
    {
        ReadingEntry Taken(string kind, string from, string to) => new(Guid.NewGuid(), Sample.Id, kind, from, to, "1", "", "rule", "", default, "");
        Assert.Equal(2, Sample.StillMissing([Taken("inside between holes", "H1", "H5")]).Length);
        Assert.Equal(Sample.Wanted[1], Assert.Single(Sample.StillMissing([Taken("Inside between holes", "h6", "H1")])));
        var one = Taken("diameter", "H6", "");
        var history = new ReadingHistory([one], [new(Guid.NewGuid(), one.Id, "slipped", default, "")]);
        Assert.Equal(2, Sample.StillMissing(history.Standing).Length);
    }

    [Theory]
    [InlineData("Buy second-hand", Route.BuySecondHand)]
    [InlineData(" buy second hand ", Route.BuySecondHand)]
    [InlineData("remake", Route.Remake)]
    [InlineData("mend", null)]
    [Truth(Grade.Property, "every route reads back from its own words")]
    public void Routes_are_read_as_people_write_them(string text, Route? route)
    {
        Assert.Equal(route, Routes.Read(text));
        Assert.All(Enum.GetValues<Route>(), r => Assert.Equal(r, Routes.Read(r.Words())));
    }

    [Fact]
    [Truth(Grade.Property, "nonsense is refused before it is kept")]
    public void Senseless_sketches_and_instruments_are_refused()
    {
        SketchedFeature Hole(string id, double? x = 1, double? size = 6) => new(id, "hole", "", "", x, 2, null, size, null);
        Assert.Null(Check.Of(new SampleSketch(Sample.Id, [Hole("H1"), Hole("H2", x: null)])));
        Assert.Contains("H1", Check.Of(new SampleSketch(Sample.Id, [Hole("H1"), Hole("H1")]))!.Sentence);
        Assert.Contains("finite", Check.Of(new SampleSketch(Sample.Id, [Hole("H1", x: double.NaN)]))!.Sentence);
        Assert.Contains("above 0", Check.Of(new SampleSketch(Sample.Id, [Hole("H1", size: -6)]))!.Sentence);
        Assert.Contains("list", Check.Of(new SampleSketch(Sample.Id, default))!.Sentence);
        Assert.Contains("list", Check.Of(Sample with { Wanted = default })!.Sentence);
        Assert.Contains("Borrowed", Check.Of(Sample with { Origin = (SampleOrigin)9 })!.Sentence);
        Assert.NotNull(Check.Of(new OwnedInstrument(Guid.NewGuid(), "wish", 0, 0, 0, false)));
        Assert.NotNull(Check.Of(new OwnedInstrument(Guid.NewGuid(), "wish", -1, 2, 0, false)));
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("{ half-typed", null)]
    [InlineData("", "folded part: nothing is given")]
    [InlineData(" \n", "folded part: nothing is given")]
    [Truth(Grade.Property, "a folded part is kept as typed, half-typed too, but not as blanks")]
    public void A_folded_part_is_typed_or_there_is_none(string? text, string? refused) =>
        Assert.Equal(refused, Check.Of(new FoldedPart(Sample.Id, text))?.Sentence.Split(';')[0]);

    [Fact]
    [Truth(Grade.Published, "RFC 3629, section 3: U+0080 to U+07FF take two bytes in UTF-8")]
    public void A_folded_part_past_its_bytes_is_refused()
    {
        Assert.Null(Check.Of(new FoldedPart(Sample.Id, new string('é', 100_000))));
        Assert.Contains("at most 200 kB", Check.Of(new FoldedPart(Sample.Id, new string('é', 100_001)))!.Sentence);
    }
}
