using System.Collections.Immutable;
using System.Text.Json;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.PlanningOffice.Tests.Futures;

/// <summary>A network and its answers from truth/montecarlo.</summary>
sealed record KnownNetwork(Network Network, JsonElement Answers)
{
    public static KnownNetwork Read(string name)
    {
        var root = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "truth", "montecarlo", name + ".json"))).RootElement;
        var activities = root.GetProperty("activities").EnumerateArray().Select(a => new Activity(
            a.GetProperty("id").GetString()!,
            [.. a.GetProperty("predecessors").EnumerateArray().Select(p => p.GetString()!)],
            ReadDuration(a.GetProperty("duration"))));
        return new(Network.Of([.. activities]).Value, root.GetProperty("answers"));
    }

    public double this[string figure] => Answers.GetProperty(figure).GetDouble();

    public double Error(string figure) => Answers.GetProperty("standard_error").GetProperty(figure).GetDouble();

    public ImmutableDictionary<string, double> Criticality =>
        Answers.GetProperty("criticality").EnumerateObject().ToImmutableDictionary(p => p.Name, p => p.Value.GetDouble());

    static Duration ReadDuration(JsonElement d)
    {
        double Of(string field) => d.GetProperty(field).GetDouble();
        return d.GetProperty("type").GetString() switch
        {
            "lognormal" => new Lognormal(Of("mean"), Of("sd")),
            "pert_beta" => new PertBeta(Of("low"), Of("mode"), Of("high")),
            "gamma" => new Gamma(Of("shape"), Of("scale")),
            "exponential" => new Exponential(Of("mean")),
            var other => throw new InvalidDataException(other),
        };
    }
}
