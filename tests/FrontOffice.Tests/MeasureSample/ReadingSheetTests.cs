using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.MeasureSample;

public partial class ReadingSheetTests
{
    const string Good = """
        # A plate.
        sample,plate,A plate
        units,mm

        feature,kind,from,to,x,y
        C1,corner,,,0,0
        C2,corner,,,80,0
        C3,corner
        E1,edge,C1,C2
        E2,edge,C2,C3
        H1,hole,,,20,25
        H2,hole

        kind,from,to,value,instrument,note
        length along edge,E1,,3 5/32 in,rule,
        centre distance,C1,C3,94.5,calliper
        inside between holes,H1,H2,33.48; 33.52; 33.50,calliper,three goes
        diameter,H1,,.257",calliper
        diameter,H2,,6.5 ± 0.05,
        edge to hole,H1,E1,21.8,± 0.1
        square,E1,E2,± 0.5°,
        on,H2,E2
        picked,H1,photo 1,x 31.5 y -12,scan
        angle,E1,E2,89° 30',protractor
        """;

    [Fact]
    public void Reads_values_as_written()
    {
        var sample = Read(Good).Value;
        Assert.Equal(("plate", "A plate", 7, 10), (sample.Id, sample.Title, sample.Features.Length, sample.Readings.Length));
        Assert.Equal(3.15625 * 25.4, sample.Readings[0].Value, 12);
        Assert.Equal("3 5/32 in", sample.Readings[0].Written);
        Assert.Equal(0.257 * 25.4, sample.Readings[3].Value, 12);
        Assert.Equal((31.5, -12, "photo 1"), (sample.Readings[8].Value, sample.Readings[8].ValueY, sample.Readings[8].Frame));
        Assert.Null(sample.Readings[8].To);
        Assert.Equal(89.5 * Math.PI / 180, sample.Readings[9].Value, 12);
    }

    [Fact]
    [Truth(Grade.Published, "JCGM 100:2008, 6.3.3: expanded uncertainty U = k u, k = 2 for a level of confidence of about 95 per cent")]
    public void A_plus_minus_is_twice_the_standard_uncertainty()
    {
        var readings = Read(Good).Value.Readings;
        Assert.Equal(0.025, readings[4].Sigma, 12);
        Assert.Equal(0.05, readings[5].Sigma, 12);
        Assert.Equal(0.25 * Math.PI / 180, readings[6].Sigma, 12);
    }

    [Fact]
    public void Repeats_count_by_their_mean_and_spread()
    {
        var reading = Read(Good).Value.Readings[2];
        var calliper = Instrument.Usual.Single(i => i.Name == "calliper");
        Assert.Equal(33.5, reading.Value, 12);
        Assert.Equal(calliper.StandardUncertainty(33.48, 33.52, 33.50), reading.Sigma, 12);
        Assert.True(reading.Sigma < calliper.StandardUncertainty(33.48, 33.52));
    }

    [Fact]
    public void A_condition_without_plus_minus_is_exact() => Assert.True(Read(Good).Value.Readings[7].Exact);

    [Fact]
    public void An_instrument_of_ones_own_counts_and_is_found_whatever_its_capitals()
    {
        var sample = Read(Good.Replace("kind,from,to,value", "instrument,resolution,error,repeat\nGrandad's rule,1/64 in,0.3 mm,\n\nkind,from,to,value").Replace("in,rule", "in,grandad's RULE")).Value;
        Assert.Equal(Math.Sqrt(25.4 / 64 * (25.4 / 64) / 12 + 0.3 * 0.3 / 3), sample.Readings[0].Sigma, 12);
    }

    [Fact]
    public void Bare_numbers_take_the_units_of_the_sheet() =>
        Assert.Equal(94.5 * 25.4, Read(Good.Replace("units,mm", "units,inch")).Value.Readings[1].Value, 9);

    [Fact]
    public void Semicolons_and_decimal_commas_go_together()
    {
        var sheet = Good.Replace("33.48; 33.52; 33.50", "\"33,48; 33,52; 33,50\"").Replace(",\"33,48; 33,52; 33,50\",", ";\"33.48; 33.52; 33.50\";");
        sheet = string.Join('\n', sheet.Split('\n').Select(l => l.Contains('"') && l.Contains("33.48") ? l.Replace(',', ';').Replace('.', ',') : l.Replace(',', ';').Replace('.', ',')));
        var sample = Read(sheet.Replace("A plate,", "A plate.")).Value;
        Assert.Equal(94.5, sample.Readings[1].Value, 12);
        Assert.Equal(33.5, sample.Readings[2].Value, 12);
    }

    [Theory]
    [InlineData("E1,edge,C1,C2", "E1,edge,C1,C9", "line 9, to: \"C9\" is not accepted; name a corner, hole or slot")]
    [InlineData("H2,hole", "H1,hole", "line 12, id: \"H1\" is not accepted; it is there already")]
    [InlineData("H2,hole", "H2,hol", "line 12, kind: \"hol\" is not accepted; write corner, hole, slot, edge or arc")]
    [InlineData("H2,hole", "H2,hole,,,5", "line 12, y: nothing is given")]
    [InlineData("H2,hole", "H 2,hole", "line 12, id: \"H 2\" is not accepted; an id is")]
    [InlineData("diameter,H1,,.257\"", "diameter,H1,,-6.5", "line 18, value: \"-6.5\" is not accepted")]
    [InlineData("diameter,H1,,.257\"", "diameter,H1,,0", "line 18, value: \"0\" is not accepted; a diameter is more than 0 mm")]
    [InlineData("diameter,H1,,.257\"", "diameter,H1,,6.5 in mm", "line 18, value: \"6.5 in mm\" is not accepted; it has two units")]
    [InlineData("diameter,H1,,.257\"", "diameter,H1,,NaN", "line 18, value: \"NaN\" is not accepted")]
    [InlineData("diameter,H1,,.257\"", "diameter,H1,,\"6.5", "line 18, cell")]
    [InlineData("diameter,H1,,.257\"", "diameter,H9,,6.5", "line 18, from: \"H9\" is not accepted; name a hole")]
    [InlineData("diameter,H1,,.257\"", "diameter,H1,H2,6.5", "line 18, to: \"H2\" is not accepted; a diameter has no second feature")]
    [InlineData("diameter,H1,,.257\"", "diametre,H1,,6.5", "line 18, kind: \"diametre\" is not accepted; write one of centre distance")]
    [InlineData("94.5,calliper", "94,5,calliper,", "line 16, instrument: \"5\" is not accepted")]
    [InlineData("94.5,calliper", "94,5,calliper,,x", "line 16, row: \"x\" is not accepted; the heading names 6 columns and this row has 8 cells")]
    [InlineData("94.5,calliper", "94.5,ruler", "line 16, instrument: \"ruler\" is not accepted; write a ± or one of rule, tape, calliper")]
    [InlineData("94.5,calliper", "94.5", "line 16, instrument: nothing is given")]
    [InlineData("94.5,calliper", "94.5,protractor", "it reads angles")]
    [InlineData("± 0.5°", "0.5", "square is a condition")]
    [InlineData("x 31.5 y -12", "31.5 -12", "write a picked place as x 31.5 y 12")]
    [InlineData("89° 30'", "189°", "less than 180 degrees")]
    [InlineData("units,mm", "units,feet", "line 3, units: \"feet\" is not accepted; write mm or inch")]
    [InlineData("units,mm", "units,mm\nunits,inch", "line 4, units: \"inch\" is not accepted; the units are given on line 3 already")]
    [InlineData("units,mm", "unit,mm", "before the tables come sample and units")]
    [InlineData("x,y", "x,z", "line 5, heading: \"z\" is not accepted; the columns after feature are kind, from")]
    [InlineData("length along edge,E1", "rise,E1", "it is an edge, and rise takes an arc here")]
    public void Refuses_with_one_sentence(string right, string wrong, string sentence)
    {
        Assert.Contains(right, Good);
        Assert.Contains(sentence, Read(ReplaceFirst(Good, right, wrong)).Refusal?.Sentence);
    }

    [Fact]
    public void The_sheet_in_the_guide_is_read_as_it_stands()
    {
        var guide = File.ReadAllText("guide/survey-sheet.md");
        var sheet = Fenced().Match(guide).Groups[1].Value;
        Assert.Equal(10, Read(sheet).Value.Readings.Length);
    }

    [Fact]
    public void Every_kind_of_reading_has_its_row_in_the_guide()
    {
        var guide = File.ReadAllText("guide/survey-sheet.md");
        Assert.DoesNotContain(KindRule.All, r => !guide.Contains($"| {r.Words} ") && !guide.Contains($", {r.Words} ") && !guide.Contains($"| {r.Words},"));
    }

    [Fact]
    [Truth(Grade.Property, "every input is read or refused with one sentence, whatever is done to a good file")]
    public void Survives_any_damage() =>
        Gen.Select(Gen.Int[0, Good.Length - 1], Gen.Int[0, 40], Gen.String).Sample((at, cut, junk) =>
        {
            var read = Read(Good[..at] + junk + Good[Math.Min(Good.Length, at + cut)..]);
            return read.Ok || read.Refusal!.Sentence.Length > 0;
        }, iter: 3000);

    static Parsed<Sample> Read(string sheet) => SampleFile.Read(Encoding.UTF8.GetBytes(sheet));

    static string ReplaceFirst(string text, string right, string wrong)
    {
        var at = text.IndexOf(right, StringComparison.Ordinal);
        return text[..at] + wrong + text[(at + right.Length)..];
    }

    [GeneratedRegex("```csv\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Fenced();
}
