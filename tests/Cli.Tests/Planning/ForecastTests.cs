using System.Text.Json;

namespace WitnessMark.Tests.Cli.Planning;

public class ForecastTests
{
    const string Two = """
        {"activities": [
          {"id": "Strip Engine", "predecessors": [], "duration": {"type": "gamma", "shape": 2, "scale": 1.5}},
          {"id": "B", "predecessors": ["Strip Engine"], "duration": {"type": "gamma", "shape": 1, "scale": 1.5}}]}
        """;

    [Fact]
    [Truth(Grade.Published, "gammas of one scale add: shape 3, scale 1.5 has mean 4.5 and variance 6.75; both activities always drive the end")]
    public void A_network_is_forecast_with_the_figures_of_the_sum()
    {
        using var place = new Place();
        File.WriteAllText(place.At("net.json"), Two);
        var told = Told.By("forecast", place.At("net.json"), "--futures", "100000", "--seed", "7", "--json");
        Assert.Equal((0, ""), (told.Code, told.Error));
        var root = JsonDocument.Parse(told.Out).RootElement;
        Assert.Equal(4.5, root.GetProperty("mean").GetDouble(), 0.04);
        Assert.Equal(Math.Sqrt(6.75), root.GetProperty("sd").GetDouble(), 0.04);
        Assert.Equal(1, root.GetProperty("criticality").GetProperty("Strip Engine").GetDouble());
        Assert.Equal(told.Out, Told.By("forecast", place.At("net.json"), "--futures", "100000", "--seed", "7", "--json").Out);
    }

    [Theory]
    [InlineData("--futures 10", "futures")]
    [InlineData("--futures 10000001", "futures")]
    [InlineData("--futures -5", "futures")]
    [InlineData("--db van.db", "--db")]
    [Truth(Grade.Property, "senseless counts are refused in one sentence with exit code 2")]
    public void Senseless_wishes_are_refused(string wish, string named)
    {
        using var place = new Place();
        File.WriteAllText(place.At("net.json"), Two);
        var told = Told.By(["forecast", place.At("net.json"), .. wish.Split(' ')]);
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Contains(named, told.Error);
    }

    [Theory]
    [InlineData("\"Strip Engine\"], \"dur", "\"B\"], \"dur", "wait for itself")]
    [InlineData("\"shape\": 2", "\"shape\": -2", "shape")]
    [InlineData("]}", "", "line")]
    [Truth(Grade.Property, "rings, impossible figures and broken JSON are refused in one sentence with exit code 2")]
    public void Bad_networks_are_refused(string good, string bad, string named)
    {
        using var place = new Place();
        File.WriteAllText(place.At("net.json"), Two.Replace(good, bad));
        var told = Told.By("forecast", place.At("net.json"));
        Assert.Equal(2, told.Code);
        Assert.Contains(named, Assert.Single(told.Error.TrimEnd('\n').Split('\n')));
    }
}
