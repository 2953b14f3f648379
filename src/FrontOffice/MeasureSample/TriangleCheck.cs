using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>
/// Three distances that can make no triangle, where no other reading can say which is wrong.
/// A triangle with a further reading between its corners, or tied at two corners to the rest of the part, passes: the adjustment may find the culprit.
/// </summary>
static class TriangleCheck
{
    /// <summary>Standard deviations by which the longest side must overshoot: never reached by chance.</summary>
    const double Beyond = 6;

    /// <summary>The longest side of the first such triangle and what would be right; null when there is none.</summary>
    public static (int Index, string Wanted)? Find(Sample sample)
    {
        var sides = Sides(sample);
        var neighbours = sides.Keys.Concat(sides.Keys.Select(k => (k.Item2, k.Item1))).ToLookup(k => k.Item1, k => k.Item2);
        foreach (var ((a, b), longest) in sides)
        {
            foreach (var c in neighbours[a].Intersect(neighbours[b]))
            {
                var first = sides[Pair(a, c)];
                var second = sides[Pair(b, c)];
                var over = longest.Value - first.Value - second.Value;
                var sigma = Math.Sqrt(longest.Sigma * longest.Sigma + first.Sigma * first.Sigma + second.Sigma * second.Sigma);
                if (over <= Beyond * sigma || Checked(sample, [a, b, c])) continue;
                return (longest.Index, $"{a}, {b} and {c} can make no triangle, since {a} to {c} to {b} is only {Shown(first.Value + second.Value)} mm; read the three again");
            }
        }
        return null;
    }

    /// <summary>Pairs read exactly once; a pair read twice is checked by its repeat.</summary>
    static Dictionary<(string, string), Reading> Sides(Sample sample)
    {
        var edges = sample.Features.Where(f => f is { Kind: FeatureKind.Edge, From: not null, To: not null }).ToDictionary(f => f.Id);
        var sides =
            from reading in sample.Readings
            let ends = reading switch
            {
                { Kind: ReadingKind.CentreDistance, To: { } to } => Pair(reading.From, to),
                { Kind: ReadingKind.LengthAlongEdge } => Pair(edges[reading.From].From!, edges[reading.From].To!),
                _ => default,
            }
            where ends.Item1 is not null
            select (ends, reading);
        return sides.GroupBy(s => s.ends, s => s.reading).Where(g => g.Count() == 1).ToDictionary(g => g.Key, g => g.First());
    }

    static bool Checked(Sample sample, HashSet<string> corners)
    {
        var byId = sample.Features.ToDictionary(f => f.Id);
        var tied = new HashSet<string>();
        var inside = 0;
        foreach (var reading in sample.Readings)
        {
            var ends = Ends(reading, byId);
            var shared = ends.Where(corners.Contains).ToArray();
            if (shared.Length < ends.Count) tied.UnionWith(shared);
            else if (ends.Count > 1) inside++;
        }
        return inside > 3 || tied.Count >= 2;
    }

    /// <summary>The places a reading holds together: centres, the corners of an edge, and the paper of a pick.</summary>
    static HashSet<string> Ends(Reading reading, Dictionary<string, Feature> byId)
    {
        var ends = new HashSet<string>();
        foreach (var id in new[] { reading.From, reading.To })
        {
            if (id is null) continue;
            if (byId[id] is { From: { } from, To: { } to }) ends.UnionWith([from, to]);
            else ends.Add(id);
        }
        if (reading.Kind == ReadingKind.Picked) ends.Add($"on {reading.Frame}");
        return ends;
    }

    static (string, string) Pair(string a, string b) => string.CompareOrdinal(a, b) < 0 ? (a, b) : (b, a);

    static string Shown(double value) => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
}
