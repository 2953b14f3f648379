using System.Globalization;
using WitnessMark.Tests;

namespace WitnessMark.Trade.Tests;

public class ThreadTests
{
    public sealed record Printed(string Thread, string Figure, string Unit, double Value, double Within, string Source);

    static IEnumerable<Printed> PrintedRows() =>
        from line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "truth/threads/printed.csv"))
        where !line.StartsWith('#') && !line.StartsWith("thread,", StringComparison.Ordinal)
        let c = line.Split(',')
        select new Printed(c[0], c[1], c[2], Number(c[3]), Number(c[4]), c[5]);

    static double Number(string s) => double.Parse(s, CultureInfo.InvariantCulture);

    [Fact, Truth(Grade.Published, "tables restating BS 84, BS 93, BS 811, ASME B1.1, ISO 228-1; truth/threads/README.md")]
    public void Core_effective_and_nut_diameters_come_out_as_printed()
    {
        var wrong = new List<string>();
        var rows = PrintedRows().ToList();
        foreach (var p in rows)
        {
            var thread = Threads.Find(p.Thread);
            Assert.True(thread is not null, p.Thread);
            var mm = p.Figure switch { "core" => thread.Core, "effective" => thread.Effective, _ => thread.NutMinor };
            var scale = p.Unit == "in" ? 25.4 : 1;
            if (Math.Abs(mm / scale - p.Value) > p.Within) wrong.Add($"{p.Thread} {p.Figure}: {mm / scale:F5}, printed {p.Value}");
        }
        Assert.Empty(wrong);
        Assert.True(rows.Count > 100);
    }

    [Fact, Truth(Grade.Published, "E. M. G. Stevens, BA thread system: pitch of n BA is 0.9^n mm, to 0.01 mm")]
    public void BA_pitches_follow_their_rule()
    {
        foreach (var t in Threads.Of(ThreadSeries.Ba))
        {
            var n = int.Parse(t.Name.Split(' ')[0], CultureInfo.InvariantCulture);
            Assert.Equal(Math.Round(Math.Pow(0.9, n), 2, MidpointRounding.AwayFromZero), t.Pitch, 9);
        }
    }

    [Fact, Truth(Grade.FromMemory, "BS 93: BA diameter is 6 P^1.2 mm, to 0.1 mm, P the unrounded pitch")]
    public void BA_diameters_follow_their_rule()
    {
        foreach (var t in Threads.Of(ThreadSeries.Ba))
        {
            var n = int.Parse(t.Name.Split(' ')[0], CultureInfo.InvariantCulture);
            Assert.Equal(Math.Round(6 * Math.Pow(Math.Pow(0.9, n), 1.2), 1), t.Diameter, 9);
        }
    }

    [Fact, Truth(Grade.CommonPractice, "numbered machine screws: diameter 0.060 in + 0.013 in times the number")]
    public void Numbered_unified_sizes_follow_their_rule()
    {
        var numbered = Threads.All.Where(t => t.Name.StartsWith("No.", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(numbered);
        foreach (var t in numbered)
        {
            var n = int.Parse(t.Name[3..t.Name.IndexOf('-', StringComparison.Ordinal)], CultureInfo.InvariantCulture);
            Assert.Equal((0.060 + 0.013 * n) * 25.4, t.Diameter, 9);
        }
    }

    [Fact, Truth(Grade.Property, "a tapping drill lies between the nut's minor and the effective diameter, give or take a drill step")]
    public void Tapping_drills_leave_a_thread()
    {
        foreach (var t in Threads.All.Where(t => t.TapDrill is not null))
        {
            var engaged = (t.Diameter - t.TapDrill!.Value) / (t.Diameter - t.Core);
            Assert.True(engaged is > 0.5 and < 1.001, $"{t.Name}: {engaged:P0} of full depth");
        }
    }

    [Fact, Truth(Grade.Property, "tables are whole: no name twice, a thread of a series grows with its size")]
    public void Tables_are_whole()
    {
        Assert.Equal(Threads.All.Length, Threads.All.DistinctBy(t => t.Name).Count());
        Assert.Equal(Threads.All.Length, Threads.All.DistinctBy(t => (t.Series, t.Diameter, t.Pitch)).Count());
        foreach (var series in Threads.All.GroupBy(t => t.Series))
        {
            Assert.All(series, t => Assert.True(t.Core > 0 && t.Effective > t.Core && t.Diameter > t.Effective && t.NutMinor >= t.Core, t.Name));
            var ordered = series.Key == ThreadSeries.Ba ? series.Reverse() : series;
            if (series.Key != ThreadSeries.Cycle) Assert.Equal(series.OrderBy(t => t.Diameter), ordered.OrderBy(t => t.Diameter));
        }
    }

    [Theory, Truth(Grade.Published, "pairs named at Wikipedia, British Standard Cycle, and a thread-pitch page")]
    [InlineData("1/4 BSF", "1/4-26 cycle")]
    [InlineData("1/4 BSW", "1/4-20 UNC")]
    [InlineData("3/8 BSW", "3/8-16 UNC")]
    [InlineData("2 BA", "No.10-32 UNF")]
    [InlineData("2 BA", "M5")]
    [InlineData("No.10-32 UNF", "M5")]
    [InlineData("1/4-26 cycle", "M6")]
    [InlineData("5/16-26 cycle", "M8x1")]
    [InlineData("0 BA", "M6")]
    public void Known_pairs_are_warned_of(string a, string b)
    {
        var alike = LookAlikes.Of(Threads.Find(a)!);
        var pair = Assert.Single(alike, p => p.Other == Threads.Find(b));
        Assert.Contains(Threads.Find(b)!.Name, pair.Why, StringComparison.Ordinal);
    }

    [Fact, Truth(Grade.Published, "BS 84 and ASME B1.1 restated: 1/2 in is 12 TPI Whitworth, 13 TPI UNC")]
    public void Half_inch_Whitworth_and_UNC_are_told_by_pitch()
    {
        Assert.False(LookAlikes.Alike(Threads.Find("1/2 BSW")!, Threads.Find("1/2-13 UNC")!));
        Assert.Equal(12, Threads.Find("1/2 BSW")!.ThreadsPerInch, 9);
    }

    [Theory, Truth(Grade.Property, "names are found however they are spaced")]
    [InlineData("1/4bsf")]
    [InlineData("1/4  BSF")]
    public void Names_are_found_loosely(string name) => Assert.Equal(6.35, Threads.Find(name)!.Diameter, 9);
}
