using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.Slices;

public class StripReadingTests
{
    [Fact]
    [Truth(Grade.FromMemory, "DIN 6935: at R = T the neutral axis lies at half of 0.65 of the thickness, 0.325")]
    public void A_strip_folded_as_the_standard_foretells_gives_the_standards_neutral_axis()
    {
        // 90°, R = T = 2: allowance π/2 · (2 + 0.325 · 2) = 4.1626; legs of 52 outside take 2 · 4 − 4.1626 off the strip.
        var bend = new StripReading("100.163 mm", "52 mm", "52.0 ± 0.02 mm", "90", "2", "2 mm").Run();
        Assert.Equal(0.325, bend.K.Value, 0.001);
        Assert.InRange(bend.K.Std, 0.001, 0.05);
    }

    [Theory]
    [InlineData("ten", "strip")]
    [InlineData("80 mm", "test bend")]
    public void A_strip_that_cannot_be_is_refused(string strip, string field) =>
        Assert.Contains(field, Assert.Throws<RefusedException>(() => new StripReading(strip, "52 mm", "52 mm", "90", "2", "2 mm").Run()).Message);
}
