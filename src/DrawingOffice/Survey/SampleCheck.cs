using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey;

/// <summary>Refuses what the adjustment could not make sense of, in a sentence that names the feature or reading.</summary>
public static class SampleCheck
{
    /// <summary>Throws <see cref="RefusedException"/> at the first fault.</summary>
    public static void Verify(Sample sample)
    {
        var features = new Dictionary<string, Feature>();
        foreach (var f in sample.Features)
        {
            if (string.IsNullOrWhiteSpace(f.Id)) Refuse("a feature has no name; give each one a short name such as H1");
            if (!features.TryAdd(f.Id, f)) Refuse($"feature {f.Id} is given twice; each name may stand once");
        }
        foreach (var f in sample.Features) VerifyFeature(f, features);
        VerifyFrames(sample);
        for (var i = 0; i < sample.Readings.Length; i++)
        {
            if (sample.Readings[i].Index != i) Refuse($"reading {i + 1} carries index {sample.Readings[i].Index}; indices run from 0 in order");
            VerifyReading(sample.Readings[i], features);
        }
    }

    /// <summary>mm. Cause: past this the part is broken, not worn.</summary>
    const double LargestWear = 50;

    static void VerifyFeature(Feature f, Dictionary<string, Feature> features)
    {
        if (f.Sketch is { } s && !(double.IsFinite(s.X) && double.IsFinite(s.Y))) Refuse($"feature {f.Id}: the sketch place is not a number");
        if (f.Wear is { } wear)
        {
            if (UsualWear.Of(f.Condition) == 0) Refuse($"feature {f.Id}: a wear of {wear} mm is given, yet it is not worn, rusted or bent; say which it is or leave the wear out");
            if (!(wear > 0 && wear <= LargestWear)) Refuse($"feature {f.Id}: a wear of {wear} mm is not possible; it must be above 0 and at most {LargestWear} mm");
        }
        if (f.From is null != f.To is null) Refuse($"feature {f.Id}: give both of its corners or neither");
        if (f.From is null) return;
        if (f.Kind is not (FeatureKind.Edge or FeatureKind.Arc)) Refuse($"feature {f.Id}: only an edge or an arc runs between two corners");
        if (f.From == f.To) Refuse($"feature {f.Id}: its two corners are the same, {f.From}; an edge needs two");
        foreach (var id in (string[])[f.From, f.To!])
        {
            if (!features.TryGetValue(id, out var corner)) Refuse($"feature {f.Id}: there is no feature {id} to run to");
            if (corner!.Kind is FeatureKind.Edge or FeatureKind.Arc) Refuse($"feature {f.Id}: {id} is {Named(corner.Kind)}; it must be a corner, hole or slot");
        }
    }

    /// <summary>Cause of the limit: a scale off by a fifth is a wrong one, not an unsure one.</summary>
    const double LargestScaleStd = 0.1;

    static void VerifyFrames(Sample sample)
    {
        var names = new HashSet<string>();
        foreach (var f in sample.Frames)
        {
            if (!names.Add(f.Name)) Refuse($"the picture or paper {f.Name} is given twice; each may stand once");
            if (!(f.ScaleStd is >= 0 and <= LargestScaleStd)) Refuse($"picture or paper {f.Name}: a scale within ± {f.ScaleStd * 200} % is not possible; it must be 0 to {LargestScaleStd * 200:0} %");
        }
    }

    static void VerifyReading(Reading r, Dictionary<string, Feature> features)
    {
        var where = $"reading {r.Index + 1} ({Named(r.Kind)})";
        if (!double.IsFinite(r.Value) || !double.IsFinite(r.ValueY)) Refuse($"{where}: the value is not a number");
        if (!(r.Sigma >= 0) || !double.IsFinite(r.Sigma)) Refuse($"{where}: ± {r.Sigma} is not possible; it must be above 0");
        var condition = r.Kind is ReadingKind.On or ReadingKind.Parallel or ReadingKind.Square or ReadingKind.Tangent;
        if (r.Sigma == 0 && !condition) Refuse($"{where}: ± 0 is only for conditions; say what the instrument can do");
        if (condition && r.Value != 0) Refuse($"{where}: a condition has no value of its own; leave it empty");
        if (r.Value < 0 && r.Kind != ReadingKind.Picked) Refuse($"{where}: {r.Value} is below zero; lengths and angles are read as positive");
        if (r.Value == 0 && r.Kind is ReadingKind.Diameter or ReadingKind.Radius or ReadingKind.SlotWidth && r.Value == 0) Refuse($"{where}: a size of 0 is not possible");
        if (r.Kind == ReadingKind.AngleBetweenEdges && r.Value > Math.PI) Refuse($"{where}: an angle between edges is at most 180°");

        var from = Find(features, r.From, where);
        var wanted = Wanted(r.Kind);
        if (!wanted.From.Contains(from.Kind)) Refuse($"{where}: {from.Id} is {Named(from.Kind)}; wanted is {Any(wanted.From)}");
        if (r.Kind is ReadingKind.LengthAlongEdge or ReadingKind.Chord or ReadingKind.Rise && from.From is null) Refuse($"{where}: {from.Id} has no corners; name its two corners first");
        if (wanted.To.Length == 0)
        {
            if (r.To is not null) Refuse($"{where}: it takes one feature, yet {r.To} is named as well");
            return;
        }
        if (r.To is null) Refuse($"{where}: it takes two features; name the second");
        var to = Find(features, r.To!, where);
        if (from.Id == to.Id) Refuse($"{where}: {from.Id} is named twice; two different features are needed");
        if (!wanted.To.Contains(to.Kind)) Refuse($"{where}: {to.Id} is {Named(to.Kind)}; wanted is {Any(wanted.To)}");
        if (to.Kind == FeatureKind.Edge && (to.From == from.Id || to.To == from.Id)) Refuse($"{where}: {from.Id} is a corner of {to.Id} and lies on it by itself; no reading is needed");
        if (r.Kind == ReadingKind.Tangent && from.Kind == FeatureKind.Edge && to.Kind == FeatureKind.Edge) Refuse($"{where}: two edges cannot be tangent; one must be an arc or a hole");
    }

    static (FeatureKind[] From, FeatureKind[] To) Wanted(ReadingKind kind)
    {
        FeatureKind[] places = [FeatureKind.Point, FeatureKind.Hole, FeatureKind.Slot, FeatureKind.Arc];
        FeatureKind[] rounds = [FeatureKind.Point, FeatureKind.Hole, FeatureKind.Arc];
        FeatureKind[] edge = [FeatureKind.Edge];
        FeatureKind[] directions = [FeatureKind.Edge, FeatureKind.Slot];
        return kind switch
        {
            ReadingKind.CentreDistance => (places, places),
            ReadingKind.OutsideOverHoles or ReadingKind.InsideBetweenHoles => (rounds, rounds),
            ReadingKind.EdgeToHole => (rounds, edge),
            ReadingKind.CentreToEdge => (places, edge),
            ReadingKind.LengthAlongEdge => (edge, []),
            ReadingKind.AcrossEdges => (edge, edge),
            ReadingKind.Diameter => ([FeatureKind.Hole], []),
            ReadingKind.SlotWidth or ReadingKind.SlotLength => ([FeatureKind.Slot], []),
            ReadingKind.Radius or ReadingKind.Chord or ReadingKind.Rise => ([FeatureKind.Arc], []),
            ReadingKind.AngleBetweenEdges or ReadingKind.Parallel or ReadingKind.Square => (directions, directions),
            ReadingKind.Picked => (places, []),
            ReadingKind.On => (places, [FeatureKind.Edge, FeatureKind.Arc]),
            _ => ([FeatureKind.Edge, FeatureKind.Arc, FeatureKind.Hole], [FeatureKind.Edge, FeatureKind.Arc, FeatureKind.Hole]),
        };
    }

    static Feature Find(Dictionary<string, Feature> features, string id, string where)
    {
        if (!features.TryGetValue(id, out var feature)) Refuse($"{where}: there is no feature {id}; known are {string.Join(", ", features.Keys.Take(12))}");
        return feature!;
    }

    static string Any(FeatureKind[] kinds) => string.Join(" or ", kinds.Select(Named));

    static string Named(FeatureKind kind) => kind switch
    {
        FeatureKind.Point => "a corner",
        FeatureKind.Hole => "a hole",
        FeatureKind.Slot => "a slot",
        FeatureKind.Edge => "an edge",
        _ => "an arc",
    };

    static string Named(ReadingKind kind) =>
        string.Concat(kind.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));

    [System.Diagnostics.CodeAnalysis.DoesNotReturn]
    static void Refuse(string sentence) => throw new RefusedException(new Refusal(sentence + "."));
}
