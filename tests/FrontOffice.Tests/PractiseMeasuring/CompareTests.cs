using MathNet.Numerics.Distributions;
using WitnessMark.FrontOffice.PractiseMeasuring.Compared;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.PractiseMeasuring;

using PractiseMeasuring = WitnessMark.FrontOffice.PractiseMeasuring.PractiseMeasuring;

public class CompareTests
{
    const int Sheets = 200;

    static PracticeComparison Of(Measurer measurer) => PractiseMeasuring.Compare(measurer.Measured());

    [Fact]
    [Truth(Grade.Published, "JCGM 100:2008, 6.3.3: two standard uncertainties hold about 95 of 100; exactly 0.9545 of a normal law")]
    public void Of_an_honest_persons_sizes_nineteen_in_twenty_lie_inside_their_plus_minus()
    {
        var all = Enumerable.Range(1, Sheets).Select(n => Of(new(n, 0.004, -0.003))).ToList();
        var inside = all.Sum(c => c.Inside) / (double)all.Sum(c => c.Sizes.Length);
        // The 31 sizes of a sheet hang together, as about 8 that do not: 200 sheets are 1600 trials, standard deviation 0.005; three of them.
        Assert.InRange(inside, 0.9545 - 0.016, 0.9545 + 0.016);
        // Squares within their 95 % band: binomial, standard deviation 0.015; three of them.
        Assert.InRange(all.Count(c => c.Squares.Passes) / (double)Sheets, 0.95 - 0.046, 0.95 + 0.046);
        // The band of the scatter holds what was put in.
        Assert.InRange(all.Count(c => c.Scatter[0].Low <= Measurer.Calliper && Measurer.Calliper <= c.Scatter[0].High) / (double)Sheets, 0.95 - 0.046, 0.95 + 0.046);
        // One in a thousand readings passes for misread: 27 readings on each of 200 sheets, 5.4 expected, Poisson; four standard deviations.
        Assert.InRange(all.Sum(c => c.Misread.Length), 0, 15);
    }

    [Fact]
    [Truth(Grade.Property, "simulation with a planted scale of the print")]
    public void A_print_that_is_half_a_per_cent_long_is_found_by_its_check_lines()
    {
        var off = 0;
        for (var n = 1; n <= 50; n++)
        {
            var c = Of(new(n, 0.005, 0.002));
            // Two lines of about 100 mm: 0.0208 mm / (100 mm · √2) = 0.00015; four standard deviations, and more than two in at most a tenth.
            Assert.InRange(c.Print.Across!.Value.Value, 0.005 - 0.0006, 0.005 + 0.0006);
            Assert.InRange(c.Print.Up!.Value.Value, 0.002 - 0.0006, 0.002 + 0.0006);
            if (Math.Abs(c.Print.Across.Value.Value - 0.005) > 2 * c.Print.Across.Value.Std) off++;
            Assert.True(c.InsideUnscaled < c.Inside);
            Assert.Contains(c.Words, w => w.Contains("too long across", StringComparison.Ordinal));
        }
        Assert.InRange(off, 0, 6);
    }

    [Fact]
    public void Without_check_lines_the_printer_is_taken_at_its_word_and_that_is_said()
    {
        var c = Of(new(12, 0.005, 0.005) { ReadsChecks = false });
        Assert.Null(c.Print.Across);
        Assert.Equal(c.Inside, c.InsideUnscaled);
        Assert.True(c.Inside < c.Sizes.Length / 2);
        Assert.Contains(c.Words, w => w.StartsWith("No check line was read", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(7)]
    [InlineData(11)]
    [InlineData(2)]
    public void A_misread_reading_is_named_with_what_it_should_have_been(int step)
    {
        for (var n = 300; n < 320; n++)
        {
            var honest = Of(new(n));
            var c = Of(new(n) { Slip = (step, 1) });
            var found = Assert.Single(c.Misread, m => m.Row == step - 1);
            Assert.Equal(found.Read - 1, found.ShouldBe, 5 * Measurer.Calliper);
            Assert.Contains(c.Words, w => w.StartsWith($"Reading {step}, ", StringComparison.Ordinal) && w.Contains("misread", StringComparison.Ordinal));
            // The rest is not spoilt by it.
            Assert.InRange(c.Scatter[0].Std, 0.8 * honest.Scatter[0].Std, 1.2 * honest.Scatter[0].Std);
        }
    }

    [Fact]
    public void Who_scatters_four_times_as_much_is_told_so_and_by_how_much()
    {
        var c = Of(new(41) { Clumsy = 4 });
        var scatter = Assert.Single(c.Scatter);
        Assert.True(scatter.Worse);
        Assert.InRange(4 * Measurer.Calliper, scatter.Low, scatter.High);
        Assert.True(c.Inside < 0.8 * c.Sizes.Length);
        Assert.True(c.InsideWithOwn > c.Inside);
        Assert.True(c.Squares.Sum > c.Squares.High);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0 (MIT): inverse chi-square")]
    public void The_bands_of_squares_and_scatter_are_those_of_chi_square()
    {
        for (var n = 1; n <= 10; n++)
        {
            var c = Of(new(n));
            var (s, k) = (c.Scatter[0], c.Squares.Freedom);
            Assert.Equal(ChiSquared.InvCDF(k, 0.025), c.Squares.Low, 1e-8);
            Assert.Equal(ChiSquared.InvCDF(k, 0.975), c.Squares.High, 1e-8);
            // One instrument: its freedom is that of the whole.
            Assert.Equal(s.Std * Math.Sqrt(k / ChiSquared.InvCDF(k, 0.975)), s.Low, 1e-10);
            Assert.Equal(s.Std * Math.Sqrt(k / ChiSquared.InvCDF(k, 0.025)), s.High, 1e-10);
        }
    }

    [Fact]
    public void What_is_read_twice_gives_the_repeatability_by_itself()
    {
        var own = Enumerable.Range(600, 20).Select(n => Math.Pow(Of(new(n) { Rounds = 2 }).Scatter[0].OfRepeats!.Value, 2)).Average();
        // Twenty sheets of 27 pairs each: variance known to 2/540, standard deviation 0.061; four of them.
        Assert.InRange(own / (Measurer.Calliper * Measurer.Calliper), 0.74, 1.26);
        Assert.Null(Of(new(600)).Scatter[0].OfRepeats);
    }

    [Fact]
    public void The_truth_stays_hidden_until_the_plate_is_held()
    {
        var request = new Measurer(5).Measured();
        var half = request with { Readings = request.Readings[..9] };
        Assert.Contains("take the rest of the list first", Assert.Throws<RefusedException>(() => PractiseMeasuring.Compare(half)).Message, StringComparison.Ordinal);
        Assert.False(PractiseMeasuring.Measure(half).Held);
        Assert.True(PractiseMeasuring.Measure(request).Held);
        Assert.Null(PractiseMeasuring.Measure(request).Next);
    }
}
