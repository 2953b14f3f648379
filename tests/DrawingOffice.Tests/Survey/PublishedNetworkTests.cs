using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

[Truth(Grade.Published, "Krumm, Geodetic Network Adjustment Examples, rev. 3.5, 2020, after the textbooks named in truth/krumm/README.md")]
public class PublishedNetworkTests
{
    /// <summary>Cause: coordinates are printed to 0.1 mm, so that a distance between two of them is off by up to 0.1 mm · √2.</summary>
    const double Printed = 0.15;

    [Theory, InlineData("strang-borre"), InlineData("hoepke"), InlineData("benning"), InlineData("ghilani"), InlineData("weiss")]
    public void Adjusted_distances(string name)
    {
        var network = PublishedNetwork.Load(name);
        var plan = Adjust.Solve(network.Sample, searchMirrors: false);
        Assert.True(plan.Convergence.Converged);
        Assert.Equal(0, plan.LooseFreedoms);
        var places = network.Sample.Features.ToDictionary(f => f.Id, f => f.Sketch!.Value);
        foreach (var (id, at, _, _) in network.Adjusted) places[id] = at;
        foreach (var d in plan.Distances()) Assert.Equal(places[d.From].DistanceTo(places[d.To]), d.Distance, Printed);
    }

    [Theory, InlineData("strang-borre"), InlineData("hoepke")]
    public void Standard_deviations_of_a_free_network(string name)
    {
        var network = PublishedNetwork.Load(name);
        var plan = Adjust.Solve(network.Sample, searchMirrors: false);
        var scale = Scale(network, plan);
        foreach (var (id, _, x, y) in network.Adjusted)
        {
            var (ofX, ofY) = Std(plan.Of(id).Ellipse);
            // Printed to 0.01 mm.
            Assert.Equal(x, scale * ofX, 0.0051);
            Assert.Equal(y, scale * ofY, 0.0051);
        }
    }

    [Theory, InlineData("benning"), InlineData("ghilani"), InlineData("weiss")]
    public void Standard_deviations_on_fixed_points(string name)
    {
        var network = PublishedNetwork.Load(name);
        var plan = Adjust.Solve(network.Sample, searchMirrors: false);
        var (solver, layout) = (plan.Solver, plan.Solver.Layout);
        var scale = Scale(network, plan);
        var held = new double[layout.Count];
        foreach (var f in network.Fixed.Select(layout.IndexOf)) held[layout.First(f)] = held[layout.First(f) + 1] = 1e6;
        var fit = plan.Fit with { Held = held };
        foreach (var (id, _, x, y) in network.Adjusted)
        {
            var first = layout.First(layout.IndexOf(id));
            var (ofX, ofY) = (Math.Sqrt(solver.Variance(fit, [first], [1])), Math.Sqrt(solver.Variance(fit, [first + 1], [1])));
            Assert.Equal(x, scale * ofX, 0.0051);
            Assert.Equal(y, scale * ofY, 0.0051);
        }
    }

    [Fact]
    public void The_misprint_of_five_centimetres_is_found()
    {
        // Höpke's list prints 1789.499 m where his results need 1789.449. The ± is the fit's own, 5 mm, not the 1 mm stated.
        var printed = PublishedNetwork.Load("hoepke");
        var scale = Scale(printed, Adjust.Solve(printed.Sample, searchMirrors: false));
        var sample = printed.Sample with { Readings = [.. printed.Sample.Readings.Select(r => r with { Sigma = scale * r.Sigma })] };
        Assert.Empty(Adjust.Solve(sample, searchMirrors: false).Doubts.Indices);

        var plan = Adjust.Solve(Simulated.WithError(sample, 23, 50), searchMirrors: false);
        Assert.Equal([23], plan.Doubts.Indices);
        Assert.True(plan.Doubts.Confirmed);
        Assert.Equal(1_789_449, plan.WithoutDoubtful!.Readings[23].Adjusted, 2.0);
    }

    /// <summary>The published ± are scaled by the fit, ours are not. Distances between fixed points that follow from one another are no surplus.</summary>
    static double Scale(PublishedNetwork network, Plan plan)
    {
        var held = network.Fixed.Length;
        var surplus = held > 1 ? held * (held - 1) / 2 - (2 * held - 3) : 0;
        return Math.Sqrt(plan.WeightedSumOfSquares / (plan.Redundancy - surplus));
    }

    static (double X, double Y) Std(Ellipse e)
    {
        var (s, c) = Math.SinCos(e.Turn);
        return (Math.Sqrt(Sq(e.Major * c) + Sq(e.Minor * s)), Math.Sqrt(Sq(e.Major * s) + Sq(e.Minor * c)));
        static double Sq(double v) => v * v;
    }
}
