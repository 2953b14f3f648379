using System.Text;
using CsCheck;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.FrontOffice.MakeToSize;

namespace WitnessMark.Tests.FrontOffice.MakeToSize;

public class SizeSheetTests
{
    const string Good = """
        # A stud and a pin.
        item,what,facet,value,instrument,condition,coat,note
        stud,external thread,size,7.88; 7.84,calliper,worn,,over the crests
        stud,external thread,pitch,22 TPI,pitch gauge
        stud,external thread,pitch,10 threads in 11.55 mm,calliper
        pin,pin,size,9.51,± 0.01,light,plated
        """;

    [Fact]
    public void Rows_of_one_item_are_one_question()
    {
        var questions = SizeSheet.Read(Encoding.UTF8.GetBytes(Good)).Value;
        Assert.Equal(["stud", "pin"], questions.Select(q => q.Label));
        Assert.Equal([Facet.Size, Facet.Pitch, Facet.Pitch], questions[0].Measurements.Select(m => m.Facet));
        Assert.Equal(7.86, questions[0].Measurements[0].Value.Value, 12);
        Assert.Equal(1.155, questions[0].Measurements[2].Value.Value, 12);
        Assert.Equal((0.005, Condition.Light, Coat.Plated), (questions[1].Measurements[0].Value.Std, questions[1].Measurements[0].Condition, questions[1].Measurements[0].Coat));
    }

    [Fact]
    public void A_pitch_over_counted_threads_shares_the_instruments_error_out()
    {
        var pitch = SizeSheet.Read(Encoding.UTF8.GetBytes(Good)).Value[0].Measurements[2];
        var calliper = DrawingOffice.Survey.Instrument.Usual.Single(i => i.Name == "calliper");
        Assert.Equal(calliper.StandardUncertainty() / 10, pitch.Value.Std, 12);
    }

    [Fact]
    [Truth(Grade.CommonPractice, "BS 84 Whitworth-form tables as printed: 5/16 in BSF has 22 threads per inch; 5/16 in = 7.94 mm")]
    public void A_worn_stud_is_named()
    {
        var result = WitnessMark.FrontOffice.MakeToSize.MakeToSize.Run(new(SizeSheet.Read(Encoding.UTF8.GetBytes(Good)).Value) { Prior = Origins.Named("british")! });
        Assert.Equal("5/16 BSF", result.Members[0].Best?.Name);
    }

    [Theory]
    [InlineData("9.51,± 0.01", "nine,± 0.01", "line 6, value: \"nine\" is not accepted")]
    [InlineData("9.51,± 0.01", "-9.51,± 0.01", "line 6, value: \"-9.51\" is not accepted")]
    [InlineData("9.51,± 0.01", "9.51,sundial", "line 6, instrument: \"sundial\" is not accepted; write a ± or one of rule")]
    [InlineData("pin,pin,size", "pin,peg,size", "line 6, what: \"peg\" is not accepted; write one of hole, pin, external thread")]
    [InlineData("pin,pin,size", "stud,pin,size", "line 6, what: \"pin\" is not accepted; item stud is external thread above")]
    [InlineData("pin,pin,size", "pin,pin,girth", "line 6, facet: \"girth\" is not accepted; write one of size, pitch, flank, core")]
    [InlineData("light,plated", "shiny,plated", "line 6, condition: \"shiny\" is not accepted; write one of new, light, worn, badly worn")]
    [InlineData("light,plated", "light,gilded", "line 6, coat: \"gilded\" is not accepted; write plated, galvanised, painted")]
    [InlineData("22 TPI,pitch gauge", "22 TPI,calliper", "line 4, instrument: \"calliper\" is not accepted; write pitch gauge, a ±, or count")]
    [InlineData("item,what", "thing,what", "line 2, first cell: \"thing\" is not accepted; begin with the heading item,what")]
    public void Refuses_with_one_sentence(string right, string wrong, string sentence)
    {
        Assert.Contains(right, Good);
        Assert.Contains(sentence, SizeSheet.Read(Encoding.UTF8.GetBytes(Good.Replace(right, wrong))).Refusal?.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "every input is read or refused with one sentence, whatever is done to a good file")]
    public void Survives_any_damage() =>
        Gen.Select(Gen.Int[0, Good.Length - 1], Gen.Int[0, 40], Gen.String).Sample((at, cut, junk) =>
        {
            var read = SizeSheet.Read(Encoding.UTF8.GetBytes(Good[..at] + junk + Good[Math.Min(Good.Length, at + cut)..]));
            return read.Ok || read.Refusal!.Sentence.Length > 0;
        }, iter: 2000);
}
