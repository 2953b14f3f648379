using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Stores;

namespace WitnessMark.Tests.FrontOffice.MeasureSample;

public class StoredSampleTests
{
    static readonly PartSample Plate = new(Guid.Parse("7d6a5f6e-0000-4000-8000-000000000001"), Guid.Empty, "Plate", SampleOrigin.TakenOff, null, []);

    static readonly SampleSketch Sketch = new(Plate.Id,
    [
        new("H1", "hole", "", "", 0, 0, null, null, null),
        new("H2", "hole", "", "", 40, 0, null, null, null),
        new("H2", "hole", "", "", 41, 0, null, null, null),
    ]);

    [Fact]
    public void A_bad_row_is_told_and_the_others_count()
    {
        ReadingEntry[] entries = [Entry("centre distance", "H1", "H2", "1 5/8\""), Entry("diameter", "H9", "", "6.5"), Entry("diameter", "H1", "", "6,5 mm", "0.05")];
        var stored = StoredSample.Of(Plate, Sketch, entries, []);
        Assert.Equal([entries[0].Id, entries[2].Id], stored.Entries);
        Assert.Equal([1.625 * 25.4, 6.5], stored.Sample!.Readings.Select(r => r.Value));
        Assert.Equal([0, 1], stored.Sample.Readings.Select(r => r.Index));
        Assert.Equal(["H2", entries[1].Id.ToString()], stored.Refused.Select(r => r.Row));
        Assert.StartsWith("from: \"H9\" is not accepted; name a hole", stored.Refused[1].Sentence);
    }

    [Fact]
    public void A_plus_minus_of_its_own_counts_instead_of_the_instrument() =>
        Assert.Equal(0.025, StoredSample.Of(Plate, Sketch, [Entry("diameter", "H1", "", "6.5", "0.05")], []).Sample!.Readings[0].Sigma, 12);

    [Fact]
    public void An_instrument_of_ones_own_takes_the_place_of_the_usual_one()
    {
        OwnedInstrument own = new(Guid.NewGuid(), "Calliper", 0.1, 0.1, 0.05, false);
        Assert.Equal(new Instrument("x", 0.1, 0.1, 0.05).StandardUncertainty(), StoredSample.Of(Plate, Sketch, [Entry("diameter", "H1", "", "6.5")], [own]).Sample!.Readings[0].Sigma, 12);
    }

    [Fact]
    public void One_entry_is_checked_by_itself()
    {
        Assert.Null(StoredSample.Check(Plate, Sketch, Entry("diameter", "H1", "", "6.5"), []));
        Assert.Contains("more than 0 mm", StoredSample.Check(Plate, Sketch, Entry("diameter", "H1", "", "0"), []));
        Assert.Null(StoredSample.Check(Plate, Sketch, Entry("external thread pitch", "stud", "worn", "22 TPI") with { Instrument = "pitch gauge" }, []));
        Assert.Contains("value", StoredSample.Check(Plate, Sketch, Entry("pin size", "pin", "worn", "nine"), []));
    }

    [Fact]
    public void Without_a_feature_there_is_no_sample_yet() => Assert.Null(StoredSample.Of(Plate, null, [], []).Sample);

    [Fact]
    public void Sizes_to_identify_are_no_part_of_the_survey() =>
        Assert.Empty(StoredSample.Of(Plate, Sketch, [Entry("pin size", "pin", "worn", "9.48")], []).Refused.Where(r => r.Row != "H2"));

    static ReadingEntry Entry(string kind, string from, string to, string value, string plusMinus = "") =>
        new(Guid.NewGuid(), Plate.Id, kind, from, to, value, plusMinus, plusMinus.Length > 0 ? "" : "calliper", "", DateTimeOffset.UnixEpoch, "bench");
}
