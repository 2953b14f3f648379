using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Photographs;

public class SamplePhotographTests
{
    static readonly SamplePhotograph Whole = new(Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), "photo-1", PictureKind.Id("abc"u8), "{}", Dropped: false);

    [Fact]
    [Truth(Grade.Property, "a whole row is kept; each field that is missing is named in one sentence")]
    public void What_is_missing_is_named()
    {
        Assert.Null(Whole.Wrong());
        (SamplePhotograph Row, string Words)[] bad =
        [
            (Whole with { Id = Guid.Empty }, "id"),
            (Whole with { VehicleId = Guid.Empty }, "vehicle"),
            (Whole with { SampleId = Guid.Empty }, "sample of the photograph"),
            (Whole with { Name = " " }, "photograph's name"),
            (Whole with { Picture = "../../etc" }, "the id that the picture was kept under"),
            (Whole with { Work = null! }, "work on the photograph"),
            (Whole with { Work = new string('x', Check.LargestFolded + 1) }, "at most 200 kB"),
        ];
        foreach (var (row, words) in bad) Assert.Contains(words, row.Wrong()!.Sentence);
    }
}
