using System.Globalization;
using WitnessMark.Maths.Units;
using WitnessMark.Tests;

namespace WitnessMark.Trade.Tests;

/// <summary>The guide's examples and the list of sources are held to what the program does.</summary>
public class GuideTests
{
    static string[] Lines(string path)
    {
        var home = new DirectoryInfo(AppContext.BaseDirectory);
        while (home is not null && !File.Exists(Path.Combine(home.FullName, "WitnessMark.slnx"))) home = home.Parent;
        Assert.NotNull(home);
        return File.ReadAllLines(Path.Combine(home.FullName, path));
    }

    /// <summary>The rows of the table whose heading is given: the text between backticks, and the second cell.</summary>
    static List<(string Written, string Value)> Rows(string heading)
    {
        var rows = Lines("docs/guide/units.md").SkipWhile(l => l != heading).Skip(2).TakeWhile(l => l.StartsWith('|'))
            .Select(l => l.Split('|')).Select(c => (c[1].Trim().Trim('`'), c[2].Trim())).ToList();
        Assert.NotEmpty(rows);
        return rows;
    }

    static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [Fact, Truth(Grade.Property, "docs/guide/units.md: every length of the table")]
    public void The_guide_s_lengths_are_read_as_it_says() =>
        Assert.All(Rows("| written | mm |"), r => Assert.Equal(Number(r.Value), Lengths.Read(r.Written, TradeSpelling.Of()).Value.Mm, 6));

    [Fact, Truth(Grade.Property, "docs/guide/units.md: every angle of the table")]
    public void The_guide_s_angles_are_read_as_it_says() =>
        Assert.All(Rows("| written | degrees |"), r => Assert.Equal(Number(r.Value), Angles.Read(r.Written).Value.Radians * 180 / Math.PI, 5));

    [Fact, Truth(Grade.Property, "docs/guide/units.md: every pitch of the table")]
    public void The_guide_s_pitches_are_read_as_it_says() =>
        Assert.All(Rows("| written | mm of pitch |"), r => Assert.Equal(Number(r.Value), Pitches.Read(r.Written).Value.Mm, 9));

    [Fact, Truth(Grade.Property, "docs/guide/units.md: what is asked back is refused")]
    public void What_the_guide_calls_double_is_refused() =>
        Assert.All(Rows("| written | could be |"), r => Assert.Contains("could be", Lengths.Read(r.Written, TradeSpelling.Of()).Refusal!.Sentence, StringComparison.Ordinal));

    [Fact, Truth(Grade.Property, "docs/guide/units.md: the styles write what the table shows")]
    public void The_guide_s_styles_write_what_it_shows()
    {
        LengthStyle[] styles = [LengthStyle.Millimetres(), LengthStyle.DecimalInches(), LengthStyle.FractionInches()];
        var rows = Rows("| style | 84.24418 mm becomes |");
        Assert.Equal(rows.Select(r => r.Value.Trim('`')), styles.Select(s => LengthWriter.Write(84.24418, s)));
    }

    [Fact, Truth(Grade.Property, "docs/sources.md lists each source of the tables once")]
    public void Every_source_stands_once_in_the_list()
    {
        var lines = Lines("docs/sources.md");
        Assert.All(Sources.All, s => Assert.Single(lines, l => l.StartsWith($"| {s.Id} | {s.Title} | {s.Grade.ToString().ToLowerInvariant()} |", StringComparison.Ordinal)));
    }
}
