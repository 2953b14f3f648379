using WitnessMark.DrawingOffice.Intent;
using WitnessMark.DrawingOffice.Intent.Tables;
using WitnessMark.Maths;
using WitnessMark.Tests;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Tests.Intent;

public class TradeSizesTests
{
    public static TheoryData<string> EveryThread() => [.. Threads.All.Select(t => t.Name)];

    [Theory]
    [MemberData(nameof(EveryThread))]
    [Truth(Grade.Published, "Thread tables as restated in public sources (docs/sources.md): diameter, pitch and flank angle of each")]
    public void A_clean_thread_is_named_by_diameter_pitch_and_angle(string name)
    {
        var thread = Threads.Find(name)!;
        var made = Practice.Usual.For(Subject.ExternalThread, Facet.Size).Mean(thread.Diameter, thread.Pitch);
        var told = Identify.One(Question.Of(Subject.ExternalThread,
            new Measured(Facet.Size, new Uncertain(made, 0.005), Condition.New),
            new Measured(Facet.Pitch, new Uncertain(thread.Pitch, 0.001)),
            new Measured(Facet.Flank, new Uncertain(thread.Form.FlankAngle, 0.01))));
        // Some are one thread with two names; some (1/8-40 cycle, No.5-40 UNC) differ in the root alone, which is then asked for.
        var named = told.Best!.AlsoCalled.Add(told.Best.Name).AddRange(told.Doubts.Where(d => d.Deciders.Any(x => x.Facet == Facet.Core) || d.OriginChance > 0).Select(d => d.Second));
        Assert.Contains(name, named);
    }

    [Fact]
    [Truth(Grade.FromMemory, "ISO 965-1 tolerance 6g: major diameter M6 5.974/5.794, M10 9.968/9.732, M12 11.966/11.701; ASME B1.1 2A 1/4-20 0.2489/0.2408 in")]
    public void A_new_bolt_comes_out_in_the_middle_of_its_tolerance()
    {
        var allowance = Practice.Usual.For(Subject.ExternalThread, Facet.Size);
        foreach (var (size, pitch, high, low) in ((double, double, double, double)[])
            [(6, 1, 5.974, 5.794), (10, 1.5, 9.968, 9.732), (12, 1.75, 11.966, 11.701), (6.35, 1.27, 0.2489 * 25.4, 0.2408 * 25.4)])
        {
            Assert.Equal((high + low) / 2, allowance.Mean(size, pitch), 0.015);
            // Evenly spread over the tolerance: width/√12 (JCGM 100, 4.3.7).
            Assert.Equal((high - low) / Math.Sqrt(12), allowance.Std(size, pitch), 0.015);
        }
    }

    [Fact]
    [Truth(Grade.Published, "Trade's own list of threads taken for one another (published pairs with their reasons)")]
    public void Every_look_alike_is_warned_of()
    {
        foreach (var (name, other) in ((string, string)[])[("0 BA", "M6"), ("2 BA", "M5"), ("1/4 BSF", "1/4-26 cycle"), ("3/8 BSW", "3/8-16 UNC"), ("5/16-26 cycle", "M8×1")])
        {
            var thread = Threads.Find(name)!;
            var told = Identify.One(Question.Of(Subject.ExternalThread,
                new Measured(Facet.Size, new Uncertain(thread.Diameter - 0.1, 0.02)),
                new Measured(Facet.Pitch, new Uncertain(thread.Pitch, 0.002)),
                new Measured(Facet.Flank, new Uncertain(thread.Form.FlankAngle, 0.01))));
            Assert.Equal(name, told.Best!.Name);
            Assert.Contains(told.Cautions, c => c.Contains("Easily taken for") && c.Contains(other));
        }
    }

    [Theory]
    [InlineData(Subject.Hole, 8)]
    [InlineData(Subject.Pin, 8)]
    [InlineData(Subject.HolePitch, 60)]
    [InlineData(Subject.Sheet, 1.2)]
    [InlineData(Subject.ExternalThread, 10)]
    [Truth(Grade.Property, "A series spread over its sizes adds to its own share: mass over a stretch is about the stretch's logarithm")]
    public void No_series_gains_by_being_crowded(Subject subject, double size)
    {
        // Two octaves about the size.
        var (low, high) = (size / 2, size * 2);
        // Inch plate is left out: so thin, the coarse and likely fractions are missing, and plate by fraction is rightly rare.
        foreach (var series in Catalogue.Between(subject, Facet.Size, low, high).Where(c => c.Series != "inch plate").GroupBy(c => c.Series))
        {
            var (from, to) = (series.Min(c => c.Size), series.Max(c => c.Size));
            if (to < from * 1.5) continue;
            var density = series.Sum(c => c.Mass) / Math.Log(high / low);
            Assert.InRange(density, 0.4, 1.3);
        }
    }

    [Fact]
    [Truth(Grade.Property, "Every series named in a subject's list has a share in some origin, and every size belongs to a listed series")]
    public void Origins_and_series_agree()
    {
        foreach (var subject in Enum.GetValues<Subject>())
        {
            var series = Catalogue.SeriesOf(subject);
            Assert.All(series, s => Assert.Contains(OriginPrior.Unknown.Origins, o => o.Share(s) > 0));
            Assert.All(Catalogue.Between(subject, Facet.Size, 0.02, 60), c => Assert.Contains(c.Series, series));
        }
    }
}
