using WitnessMark.DrawingOffice.Forming;
using WitnessMark.Tests;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Tests.Forming;

public class BendForceTests
{
    [Fact]
    [Truth(Grade.FromMemory, "a manufacturing textbook's example: 44.5 mm wide, 3.2 mm thick, 450 MPa, die opening 25 mm, K 1.33: 10 909 N")]
    public void Air_bending_over_a_vee() =>
        Assert.Equal(10909, BendForce.AirBend(44.5, 3.2, 450, 25).Value, 0.5);

    [Fact]
    [Truth(Grade.Property, "the folding moment is the plastic moment of the section; a V die loaded at its middle by F·D/4 must reach it")]
    public void A_vee_gives_at_least_the_plastic_moment()
    {
        var force = BendForce.AirBend(100, 2, 400, 16).Value;
        var moment = BendForce.FoldingMoment(100, 2, 400);
        Assert.InRange(force * 16 / 4 / moment, 1, 1.5);
    }

    [Fact]
    [Truth(Grade.Property, "bad input is one sentence that names the field")]
    public void What_cannot_be_is_refused()
    {
        Assert.StartsWith("die opening: \"3 mm\"", BendForce.AirBend(100, 2, 400, 3).Refusal!.Sentence);
        Assert.StartsWith("thickness: \"0\"", BendForce.Wipe(100, 0, 400, 3).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.CommonPractice, "bend line along the grain asks for about twice the radius of one across it")]
    public void Grain_widens_the_radius()
    {
        var hard = Materials.Find("Aluminium 6082")!;
        var across = LeastRadius.Of(hard, 2, Grain.Across)!.Value;
        Assert.Equal(2 / 2.0 * (100 / 6.0 - 1), across, 1e-9);
        Assert.Equal(2 * across, LeastRadius.Of(hard, 2, Grain.Along)!.Value, 1e-9);
    }

    [Fact]
    [Truth(Grade.FromMemory, "DC01 with 28 % at break bears about 20 % before it necks")]
    public void Uniform_elongation_of_soft_sheet() =>
        Assert.Equal(0.2, UniformElongation.Of(Materials.Find("DC01")!)!.Value, 0.005);
}
