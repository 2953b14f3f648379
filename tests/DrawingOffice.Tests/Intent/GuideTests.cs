using System.Globalization;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent;

/// <summary>docs/guide/made-to.md is held to what the program says.</summary>
public class GuideTests(ITestOutputHelper output)
{
    static readonly string Guide = Read();

    static Measured Size(double mm, double std = 0.021, Condition condition = Condition.Unknown, string item = "") =>
        new(Facet.Size, new Uncertain(mm, std), condition, item);

    public static TheoryData<string, Question, OriginPrior> Examples() => new()
    {
        { "stud", Question.Of(Subject.ExternalThread, Size(6.22), Measured.PitchByGauge(25.4 / 26, 12)), OriginPrior.Unknown },
        { "stud with its angle", Question.Of(Subject.ExternalThread, Size(6.22), Measured.PitchByGauge(25.4 / 26, 12),
            new Measured(Facet.Flank, new Uncertain(55 * Math.PI / 180, Math.PI / 180))), OriginPrior.Unknown },
        { "pin", Question.Of(Subject.Pin, Size(9.415, condition: Condition.Worn)), OriginPrior.BritishToAbout1950 },
        { "hole", Question.Of(Subject.Hole, Size(8.22)), OriginPrior.Unknown },
        { "odd thread", Question.Of(Subject.ExternalThread, Size(8.6, 0.01, Condition.New), Measured.PitchByGauge(25.4 / 22, 12)), OriginPrior.Unknown },
    };

    [Theory]
    [MemberData(nameof(Examples))]
    [Truth(Grade.Property, "docs/guide/made-to.md: each example's verdict")]
    public void The_guide_s_examples_are_what_is_said(string name, Question question, OriginPrior prior)
    {
        var words = Identify.One(question, prior).Words;
        output.WriteLine($"{name}: {words}");
        Assert.Contains(words, Guide);
    }

    [Fact]
    [Truth(Grade.Property, "docs/guide/made-to.md: the table of making and wear is the one in use")]
    public void The_guide_s_table_is_the_one_in_use()
    {
        foreach (var a in Practice.Usual.Allowances.Where(a => a.Facet is Facet.Size or Facet.Core))
        {
            var degrees = a.Subject == Subject.Angle ? 180 / Math.PI : 1;
            var way = a.WearSign switch { > 0 => "grows", < 0 => "shrinks", _ => "none" };
            var scales = a.WearSign == 0 ? "" : string.Join(" / ", a.Scales.Select(Text));
            var row = $"| {a.Subject} {a.Facet.ToString().ToLowerInvariant()} | {Sum(a.Offset, a.OffsetPerPitch, 0)} | {Sum(a.Spread * degrees, a.SpreadPerPitch, a.SpreadPerSize)} | {way} | {scales} |";
            output.WriteLine(row);
            Assert.Contains(row, Guide);
        }
    }

    [Fact]
    [Truth(Grade.Property, "docs/guide/made-to.md: what a wrong practice or prior does to the odds, within 0.04 (three standard deviations of 1,000 parts)")]
    public void The_guide_s_warnings_are_as_large_as_it_says()
    {
        var doubled = Practice.Usual with { Allowances = [.. Practice.Usual.Allowances.Select(a => a with { Scales = [.. a.Scales.Select(s => 2 * s)] })] };
        var metric = OriginPrior.ContinentalOrJapanese;
        (string Told, double Found)[] found =
        [
            ("nothing", CalibrationTests.Overconfidence(OriginPrior.Unknown, Practice.Usual, OriginPrior.Unknown)),
            ("wear is twice the table's", CalibrationTests.Overconfidence(OriginPrior.Unknown, doubled, OriginPrior.Unknown)),
            ("a metric vehicle, origin left unknown", CalibrationTests.Overconfidence(metric, Practice.Usual, OriginPrior.Unknown)),
            ("a metric vehicle called British", CalibrationTests.Overconfidence(metric, Practice.Usual, OriginPrior.BritishToAbout1950)),
        ];
        foreach (var (told, value) in found)
        {
            output.WriteLine($"| {told} | {value:0.00} |");
            var row = Guide.Split('\n').Single(l => l.StartsWith($"| {told} |", StringComparison.Ordinal));
            Assert.Equal(double.Parse(row.Split('|')[2], CultureInfo.InvariantCulture), value, 0.04);
        }
    }

    static string Sum(double alone, double perPitch, double perSize)
    {
        string[] terms = [.. new[] { (alone, ""), (perPitch, "P"), (perSize, "D") }.Where(t => t.Item1 != 0).Select(t => Text(t.Item1) + t.Item2)];
        return terms.Length == 0 ? "0" : string.Join(" + ", terms).Replace("+ -", "− ").Replace("-", "−");
    }

    static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    static string Read()
    {
        var home = new DirectoryInfo(AppContext.BaseDirectory);
        while (home is not null && !File.Exists(Path.Combine(home.FullName, "WitnessMark.slnx"))) home = home.Parent;
        Assert.NotNull(home);
        return File.ReadAllText(Path.Combine(home.FullName, "docs/guide/made-to.md"));
    }
}
