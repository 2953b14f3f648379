using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>Features that stand level in a frame once what was accepted holds.</summary>
/// <param name="At">mm.</param>
sealed record Station(ImmutableArray<int> Members, double At)
{
    /// <summary>mm. Cause: accepted conditions are solved to far less, and two stations fall so near by chance once in a million plates.</summary>
    const double Level = 1e-5;

    public int First => Members[0];

    public static List<Station> Of(Frame frame, bool across, double[] x)
    {
        var stations = new List<Station>();
        foreach (var (feature, at) in frame.Standing(across).Select(f => (f, frame.Station(f, across, x))).OrderBy(s => s.Item2))
        {
            if (stations.Count > 0 && at - stations[^1].At < Level) stations[^1] = stations[^1] with { Members = stations[^1].Members.Add(feature) };
            else stations.Add(new([feature], at));
        }
        return stations;
    }
}
