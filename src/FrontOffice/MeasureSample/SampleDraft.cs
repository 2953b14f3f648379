using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Typed;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>A sample in the making: every feature and reading is checked as it is added, whichever file it comes from.</summary>
sealed class SampleDraft
{
    /// <summary>mm. Nothing that is surveyed in a shed is longer; a value past it has a slipped unit or decimal.</summary>
    public const double Longest = 100_000;

    /// <summary>Of the scale of a picture: the same as the adjustment's own limit.</summary>
    const double MostScale = 0.1;

    /// <summary>mm: the same as the adjustment's own limit.</summary>
    const double MostWear = 50;

    readonly Dictionary<string, Feature> _known = [];
    readonly ImmutableArray<Feature>.Builder _features = ImmutableArray.CreateBuilder<Feature>();
    readonly ImmutableArray<Reading>.Builder _readings = ImmutableArray.CreateBuilder<Reading>();

    readonly ImmutableArray<PickFrame>.Builder _frames = ImmutableArray.CreateBuilder<PickFrame>();

    public int NextIndex => _readings.Count;

    public bool IsEmpty => _features.Count == 0;

    public void Add(Feature feature, Place place)
    {
        if (!IsId(feature.Id)) throw place.Refuse("id", feature.Id, "an id is 1 to 40 letters, digits, dashes, dots or underscores");
        if (_features.Count == TextFile.MostFeatures) throw place.Refuse("features", $"{TextFile.MostFeatures + 1}", $"at most {TextFile.MostFeatures} can be adjusted together");
        if (_known.ContainsKey(feature.Id)) throw place.Refuse("id", feature.Id, "it is there already; give every feature an id of its own");
        CheckSketch(feature, place);
        CheckWear(feature, place);
        CheckEnds(feature, place);
        _known.Add(feature.Id, feature);
        _features.Add(feature);
    }

    /// <summary>The reading must fit its kind; its index is the next in order.</summary>
    public void Add(Reading reading, Place place)
    {
        var rule = KindRule.Of(reading.Kind);
        if (_readings.Count == TextFile.MostReadings) throw place.Refuse("readings", $"{TextFile.MostReadings + 1}", $"at most {TextFile.MostReadings} can be adjusted together");
        CheckFeature("from", reading.From, rule.From, rule, place);
        if (!rule.To.IsEmpty) CheckFeature("to", reading.To, rule.To, rule, place);
        else if (reading.To is not null) throw place.Refuse("to", reading.To, $"{rule.One} has no second feature; leave it empty");
        if (reading.From == reading.To) throw place.Refuse("to", reading.To, "name another feature than in from");
        if (Known(reading.To) is { Kind: FeatureKind.Edge } edge && (edge.From == reading.From || edge.To == reading.From))
            throw place.Refuse("from", reading.From, $"it is an end of {edge.Id} and lies on it by itself; leave the reading out");
        if (reading.Kind == ReadingKind.Tangent && Known(reading.From)?.Kind == FeatureKind.Edge && Known(reading.To)?.Kind == FeatureKind.Edge)
            throw place.Refuse("to", reading.To, "two edges are never tangent; name an arc or a hole");
        if (NeedsEnds(reading.Kind) && _known[reading.From].From is null)
            throw place.Refuse("from", reading.From, $"{rule.One} needs its two end corners, and they are not named");
        _readings.Add(reading);
    }

    /// <summary>A paper or picture whose scale is not quite known.</summary>
    public void Add(PickFrame frame, Place place)
    {
        if (frame.Name.Length is 0 or > 40) throw place.Refuse("frame", frame.Name, "give the paper or picture a name of 1 to 40 letters, as in the readings picked from it");
        if (_frames.Any(f => f.Name == frame.Name)) throw place.Refuse("frame", frame.Name, "it is there already; name each paper or picture once");
        if (!(frame.ScaleStd is >= 0 and <= MostScale)) throw place.Refuse("scale", Words(frame.ScaleStd * 200), $"a scale is off by 0 to {MostScale * 200:0} %");
        _frames.Add(frame);
    }

    public Sample Finish(string id, string title, Place end)
    {
        if (IsEmpty) throw end.Refuse("features", null, "name at least one feature of the part");
        return new Sample(id, title, _features.ToImmutable(), _readings.ToImmutable()) { Frames = _frames.ToImmutable() };
    }

    Feature? Known(string? id) => id is not null && _known.TryGetValue(id, out var feature) ? feature : null;

    void CheckFeature(string field, string? id, ImmutableArray<FeatureKind> wanted, KindRule rule, Place place)
    {
        var kinds = string.Join(" or ", wanted.Select(FeatureWords.One));
        if (Known(id) is not { } feature) throw place.Refuse(field, id, $"name {kinds} that is among the features{NearestId(id)}");
        if (!wanted.Contains(feature.Kind)) throw place.Refuse(field, id, $"it is {FeatureWords.One(feature.Kind)}, and {rule.Words} takes {kinds} here");
    }

    string NearestId(string? id) =>
        _features.FirstOrDefault(f => string.Equals(f.Id, id?.Trim(), StringComparison.OrdinalIgnoreCase)) is { } near ? $", perhaps {near.Id}" : "";

    static bool NeedsEnds(ReadingKind kind) => kind is ReadingKind.LengthAlongEdge or ReadingKind.Chord or ReadingKind.Rise;

    static void CheckSketch(Feature feature, Place place)
    {
        Number("x", feature.Sketch?.X, -Longest);
        Number("y", feature.Sketch?.Y, -Longest);
        Number("size", feature.SketchSize, 0);
        Number("length", feature.SketchLength, 0);
        if (feature.SketchTurn is { } turn && !(Math.Abs(turn) <= 2 * Math.PI)) throw place.Refuse("turn", Words(turn), "a turn is at most one whole turn");

        void Number(string field, double? value, double low)
        {
            if (value is { } v && !(v >= low && v <= Longest)) throw place.Refuse(field, Words(v), $"a sketch goes from {Words(low)} to {Longest} mm");
        }
    }

    static void CheckWear(Feature feature, Place place)
    {
        if (feature.Wear is not { } wear) return;
        if (UsualWear.Of(feature.Condition) == 0) throw place.Refuse("wear", Words(wear), "only what is worn, rusted or bent has a wear; say so in condition, or leave it empty");
        if (!(wear > 0 && wear <= MostWear)) throw place.Refuse("wear", Words(wear), $"a wear is more than 0 and at most {MostWear} mm");
    }

    void CheckEnds(Feature feature, Place place)
    {
        if (feature is { From: null, To: null }) return;
        if (feature.Kind is not (FeatureKind.Edge or FeatureKind.Arc)) throw place.Refuse("from", feature.From ?? feature.To, "only an edge or an arc has end corners");
        if (feature.From is null) throw place.Refuse("from", null, "give both end corners or neither");
        End("from", feature.From);
        End("to", feature.To);
        if (feature.From == feature.To) throw place.Refuse("to", feature.To, "an edge or arc runs between two different corners");

        void End(string field, string? id)
        {
            if (Known(id) is not { Kind: FeatureKind.Point or FeatureKind.Hole or FeatureKind.Slot })
                throw place.Refuse(field, id, $"name a corner, hole or slot that stands before it{NearestId(id)}");
        }
    }

    static bool IsId(string id) => id.Length is > 0 and <= 40 && id.All(c => char.IsLetterOrDigit(c) || c is '-' or '.' or '_');

    static string Words(double value) => value.ToString("R", System.Globalization.CultureInfo.InvariantCulture);
}
