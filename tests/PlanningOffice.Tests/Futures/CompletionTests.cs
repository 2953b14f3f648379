using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Futures;

public sealed class CompletionTests
{
    const int Futures = 200_000;

    /// <summary>Five figures and twelve shares are looked at: 4 standard errors keep a false alarm below 1 in 900 for a fresh seed.</summary>
    const double Bound = 4;

    [Fact]
    [Truth(Grade.SecondImplementation, "truth/montecarlo/network-2-twelve-pert.json: 8,000,000 futures by a separate program")]
    public void Twelve_pert_activities_end_as_a_separate_simulator_says()
    {
        var known = KnownNetwork.Read("network-2-twelve-pert");
        var done = Completion.Simulate(known.Network, Futures, 2);
        var widened = Math.Sqrt(1 + known["samples"] / Futures);
        foreach (var (figure, value) in Figures(done.Time))
            Assert.InRange((value - known[figure]) / (known.Error(figure) * widened), -Bound, Bound);
        foreach (var (id, share) in known.Criticality)
            // The answers are printed to four places.
            Assert.InRange(done.Criticality[id] - share, -Bound * ShareError(share) - 5e-5, Bound * ShareError(share) + 5e-5);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "truth/montecarlo/network-2-twelve-pert.json: standard errors from 80 batches")]
    public void Stated_standard_errors_agree_with_those_from_batches()
    {
        var known = KnownNetwork.Read("network-2-twelve-pert");
        var time = Completion.Simulate(known.Network, Futures, 7).Time;
        var toOurs = Math.Sqrt(known["samples"] / Futures);
        // 80 batches know a standard error to 8 %, the gap of order statistics to about as much: 3 of the two together.
        foreach (var (figure, error) in new[] { ("mean", time.Mean.Std), ("p10", time.P10.Std), ("p50", time.P50.Std), ("p90", time.P90.Std) })
            Assert.InRange(error / (known.Error(figure) * toOurs), 0.66, 1.34);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "truth/montecarlo/network-6-series-gamma.json: a sum of gammas of one scale is a gamma (exact)")]
    public void Gammas_in_series_add_up_to_a_gamma()
    {
        var known = KnownNetwork.Read("network-6-series-gamma");
        var done = Completion.Simulate(known.Network, Futures, 6);
        var t = done.Time;
        foreach (var (figure, value) in new[] { ("mean", t.Mean), ("p10", t.P10), ("p50", t.P50), ("p90", t.P90) })
            Assert.InRange((value.Value - known[figure]) / value.Std, -Bound, Bound);
        Assert.InRange(t.Sd / known["sd"], 0.98, 1.02);
        Assert.All(done.Criticality.Values, share => Assert.Equal(1, share));
    }

    [Fact]
    [Truth(Grade.Published, "largest of independent exponentials: F(t) = Π(1 − exp(−t/mᵢ)); mean by inclusion and exclusion (textbook)")]
    public void The_longest_of_parallel_exponentials_has_the_known_mean_and_median()
    {
        var network = Network.Of([new("A", [], new Exponential(1)), new("B", [], new Exponential(2)), new("C", [], new Exponential(4))]).Value;
        var done = Completion.Simulate(network, Futures, 3).Time;
        const double mean = 1 + 2 + 4 - 1 / (1 + 0.5) - 1 / (1 + 0.25) - 1 / (0.5 + 0.25) + 1 / (1 + 0.5 + 0.25);
        Assert.InRange((done.Mean.Value - mean) / done.Mean.Std, -Bound, Bound);
        double F(double t) => (1 - Math.Exp(-t)) * (1 - Math.Exp(-t / 2)) * (1 - Math.Exp(-t / 4));
        Assert.InRange(F(done.P50.Value), 0.5 - 0.005, 0.5 + 0.005);
        Assert.InRange(F(done.P90.Value), 0.9 - 0.003, 0.9 + 0.003);
    }

    [Fact]
    [Truth(Grade.Property, "the same seed gives the same futures")]
    public void The_same_seed_gives_the_same_futures()
    {
        var network = KnownNetwork.Read("network-2-twelve-pert").Network;
        Assert.Equal(Completion.Simulate(network, 500, 9).Time, Completion.Simulate(network, 500, 9).Time);
    }

    static IEnumerable<(string, double)> Figures(Spread s) =>
        [("mean", s.Mean.Value), ("sd", s.Sd), ("p10", s.P10.Value), ("p50", s.P50.Value), ("p90", s.P90.Value)];

    static double ShareError(double share) => Math.Sqrt(share * (1 - share) / Futures);
}
