using CsCheck;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

public class TestBendTests
{
    static readonly TestStrip Strip = new(new(100, 0.05), new(51.4, 0.05), new(51.45, 0.05), new(Math.PI / 2, 0.004), new(2, 0.1), new(1.5, 0.01));

    [Fact]
    [Truth(Grade.Property, "a strip laid out with a known K gives that K back")]
    public void The_factor_that_made_the_strip_is_found()
    {
        Gen.Select(Gen.Double[0.26, 0.5], Gen.Double[0.3, Math.PI], Gen.Double[0.5, 6], Gen.Double[0.5, 4]).Sample((k, angle, r, t) =>
        {
            var flat = Section.FlatLength([40, 50], [(angle, r)], t, new NeutralAxis(k)).Value;
            var found = TestBend.From(new(new(flat, 0), new(40, 0), new(50, 0), new(angle, 0), new(r, 0), new(t, 0))).Value;
            Assert.Equal(k, found.K.Value, 1e-10);
            Assert.Equal(new NeutralAxis(k).For(angle, r, t).Value.Length, found.For(angle, r, t).Value.Length, 1e-10);
        });
    }

    [Theory]
    [Truth(Grade.SecondImplementation, "JCGM 101: propagation by drawing the readings at random, seeded")]
    [InlineData(90)]
    [InlineData(60)]
    [InlineData(120)]
    public void Its_uncertainty_agrees_with_random_draws(double degrees)
    {
        var angle = degrees * Math.PI / 180;
        var flat = Section.FlatLength([52, 52], [(angle, 2)], 1.5, new NeutralAxis(0.42)).Value;
        var strip = Strip with { Strip = new(flat, 0.05), LegA = new(52, 0.05), LegB = new(52, 0.05), Angle = new(angle, 0.004) };
        var stated = TestBend.From(strip).Value.K.Std;
        var chance = new Chance(7);
        double Drawn(Uncertain u) => u.Value + u.Std * chance.Normal();
        var draws = Enumerable.Range(0, 20_000).Select(_ =>
        {
            var (r, t, a) = (Drawn(strip.Radius), Drawn(strip.Thickness), Drawn(strip.Angle));
            return ((Drawn(strip.Strip) - Drawn(strip.LegA) - Drawn(strip.LegB) + 2 * Setback.Outside(a, r, t)) / a - r) / t;
        }).ToList();
        var mean = draws.Average();
        var std = Math.Sqrt(draws.Average(d => (d - mean) * (d - mean)));
        // 20,000 draws know a spread to 0.5 %; 3 % leaves room for curvature.
        Assert.InRange(stated / std, 0.97, 1.03);
    }

    [Fact]
    public void An_allowance_carries_the_uncertainty_of_the_strip()
    {
        var method = TestBend.From(Strip).Value;
        var allowance = method.For(Math.PI / 2, 2, 1.5).Value;
        Assert.Equal(Math.PI / 2 * 1.5 * method.K.Std, allowance.Std!.Value, 12);
        Assert.Empty(allowance.Cautions);
        Assert.NotEmpty(method.For(Math.PI / 2, 6, 1.5).Value.Cautions);
        Assert.NotEmpty(method.For(Math.PI / 2, 3, 2.2).Value.Cautions);
    }

    [Fact]
    public void A_strip_that_cannot_be_is_refused()
    {
        Assert.Contains("outside the sheet", TestBend.From(Strip with { LegA = new(40, 0.1) }).Refusal!.Sentence);
        Assert.False(TestBend.From(Strip with { Strip = new(double.NaN, 0.1) }).Ok);
    }
}
