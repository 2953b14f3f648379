using WitnessMark.DrawingOffice.Survey.Solid.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>Refuses what the adjustment in space could not make sense of, in a sentence that names the feature or reading.</summary>
static class SolidCheck
{
    /// <summary>Throws <see cref="RefusedException"/> at the first fault.</summary>
    public static void Verify(SolidSample sample)
    {
        var features = new Dictionary<string, SolidFeature>();
        foreach (var f in sample.Features)
        {
            if (string.IsNullOrWhiteSpace(f.Id)) Refuse("a feature has no name; give each one a short name such as H1");
            if (!features.TryAdd(f.Id, f)) Refuse($"feature {f.Id} is given twice; each name may stand once");
        }
        foreach (var f in sample.Features) Verify(f, features);
        foreach (var face in sample.Faces)
        {
            if (!features.TryGetValue(face.Plane, out var plane)) Refuse($"flat survey {face.Sample.Id}: there is no face {face.Plane} to lay it on");
            if (plane!.Kind != SolidKind.Plane) Refuse($"flat survey {face.Sample.Id}: {face.Plane} is {Named(plane.Kind)}; a flat survey lies on a face");
            SampleCheck.Verify(face.Sample);
        }
        for (var i = 0; i < sample.Readings.Length; i++)
        {
            if (sample.Readings[i].Index != i) Refuse($"reading {i + 1} carries index {sample.Readings[i].Index}; indices run from 0 in order");
            // Readings may name features of the flat faces; these are looked at when the faces have been joined.
            if (sample.Faces.IsEmpty) Verify(sample.Readings[i], features);
        }
    }

    static void Verify(SolidFeature f, Dictionary<string, SolidFeature> features)
    {
        if (f.Sketch is { } s && !double.IsFinite(s.Length)) Refuse($"feature {f.Id}: the sketch place is not a number");
        if (f.SketchDirection is { } d && (!double.IsFinite(d.Length) || d.Length == 0)) Refuse($"feature {f.Id}: the sketched direction has no length; give three numbers of which one is not 0");
        if (f.SketchSize is { } size && !(size > 0 && double.IsFinite(size))) Refuse($"feature {f.Id}: the sketched diameter {size} is not possible; it must be above 0");
        if (f.On is not null)
        {
            if (f.Kind is not (SolidKind.Point or SolidKind.Hole or SolidKind.Edge)) Refuse($"feature {f.Id}: {Named(f.Kind)} cannot lie on a face; a corner, hole or edge can");
            if (!features.TryGetValue(f.On, out var face)) Refuse($"feature {f.Id}: there is no face {f.On} for it to lie on");
            if (face!.Kind != SolidKind.Plane) Refuse($"feature {f.Id}: {f.On} is {Named(face.Kind)}; it can lie on a face only");
        }
        if (f.From is null != f.To is null) Refuse($"feature {f.Id}: give both of its ends or neither");
        if (f.From is null) return;
        if (f.Kind != SolidKind.Edge) Refuse($"feature {f.Id}: only an edge runs between two corners or faces");
        if (f.From == f.To) Refuse($"feature {f.Id}: its two ends are the same, {f.From}; an edge needs two");
        var ends = ((string[])[f.From, f.To!]).Select(id =>
        {
            if (!features.TryGetValue(id, out var end)) Refuse($"feature {f.Id}: there is no feature {id} for it to run to");
            return end!.Kind == SolidKind.Hole ? SolidKind.Point : end.Kind;
        }).Distinct().ToList();
        if (ends is not ([SolidKind.Point] or [SolidKind.Plane])) Refuse($"feature {f.Id}: an edge runs through two corners or where two faces meet; {f.From} and {f.To} are neither");
        if (ends[0] == SolidKind.Plane && f.On is not null) Refuse($"feature {f.Id}: it lies on its two faces already; leave out the face {f.On}");
    }

    static void Verify(SolidReading r, Dictionary<string, SolidFeature> features)
    {
        var where = r.FlatFace is { } flat && r.FlatIndex >= 0 ? $"face {flat}, reading {r.FlatIndex + 1} ({Named(r.Kind)})" : $"reading {r.Index + 1} ({Named(r.Kind)})";
        var condition = SolidObservations.IsCondition(r.Kind);
        if (!double.IsFinite(r.Value) || !double.IsFinite(r.ValueY)) Refuse($"{where}: the value is not a number");
        if (!(r.Sigma >= 0) || !double.IsFinite(r.Sigma)) Refuse($"{where}: ± {r.Sigma} is not possible; it must be above 0");
        if (r.Sigma == 0 && !condition) Refuse($"{where}: ± 0 is only for conditions; say what the instrument can do");
        if (condition && r.Value != 0) Refuse($"{where}: a condition has no value of its own; leave it empty");
        if (r.Value < 0 && r.Kind is not (SolidReadingKind.OnFace or SolidReadingKind.Height or SolidReadingKind.HeightUnderPin)) Refuse($"{where}: {r.Value} is below zero; lengths and angles are read as positive");
        if (r.Value == 0 && r.Kind == SolidReadingKind.Diameter) Refuse($"{where}: a diameter of 0 is not possible");
        if (r.Kind == SolidReadingKind.Angle && r.Value > Math.PI) Refuse($"{where}: an angle is at most 180°");
        if (r.Pin is { } pin && !(pin > 0 && double.IsFinite(pin))) Refuse($"{where}: a pin of diameter {pin} is not possible; give its diameter or leave it out");

        var from = Find(features, r.From, where);
        var (wantedFrom, wantedTo) = Wanted(r.Kind);
        if (!wantedFrom.Contains(from.Kind)) Refuse($"{where}: {from.Id} is {Named(from.Kind)}; wanted is {Any(wantedFrom)}");
        if (r.Kind == SolidReadingKind.LengthAlongEdge && (from.From is null || Find(features, from.From, where).Kind == SolidKind.Plane)) Refuse($"{where}: {from.Id} has no corners; name its two corners first");
        if (r.At is { } at && Find(features, at, where).Kind is not (SolidKind.Point or SolidKind.Hole)) Refuse($"{where}: it is said to be taken opposite {at}; name a corner or a hole");
        if (r.At is null && r.Kind is SolidReadingKind.Depth or SolidReadingKind.Thickness or SolidReadingKind.Height or SolidReadingKind.AcrossEdges or SolidReadingKind.NearSideToPlane
            && from.Kind is SolidKind.Plane or SolidKind.Edge or SolidKind.Cylinder && !features.Values.Any(f => f.Kind is SolidKind.Point or SolidKind.Hole))
            Refuse($"{where}: there is no corner or hole to say where on {from.Id} it was taken; sketch one");
        if (wantedTo.Length == 0)
        {
            if (r.To is not null) Refuse($"{where}: it takes one feature, yet {r.To} is named as well");
            return;
        }
        if (r.To is null) Refuse($"{where}: it takes two features; name the second");
        var to = Find(features, r.To!, where);
        if (from.Id == to.Id) Refuse($"{where}: {from.Id} is named twice; two different features are needed");
        if (!wantedTo.Contains(to.Kind)) Refuse($"{where}: {to.Id} is {Named(to.Kind)}; wanted is {Any(wantedTo)}");
        Verify(r.Kind, from, to, where);
    }

    static void Verify(SolidReadingKind kind, SolidFeature from, SolidFeature to, string where)
    {
        if (to.Kind == SolidKind.Edge && (to.From == from.Id || to.To == from.Id)) Refuse($"{where}: {from.Id} is a corner of {to.Id} and lies on it by itself; no reading is needed");
        if (from.On == to.Id && (kind is SolidReadingKind.PointToPlane or SolidReadingKind.On)) Refuse($"{where}: {from.Id} lies on {to.Id} already; no reading is needed");
        if (kind == SolidReadingKind.On && from.Kind == SolidKind.Edge && to.Kind != SolidKind.Plane) Refuse($"{where}: an edge can lie on a face only");
        if (kind is SolidReadingKind.OverHoles or SolidReadingKind.BetweenHoles && from.On is not null && to.On is not null && from.On != to.On)
            Refuse($"{where}: {from.Id} and {to.Id} are in two faces, {from.On} and {to.On}; over or between holes is read on one face, else read from centre to centre");
    }

    static (SolidKind[] From, SolidKind[] To) Wanted(SolidReadingKind kind)
    {
        SolidKind[] places = [SolidKind.Point, SolidKind.Hole];
        SolidKind[] rounds = [SolidKind.Hole, SolidKind.Cylinder];
        SolidKind[] plane = [SolidKind.Plane];
        SolidKind[] plate = [SolidKind.SetUp];
        SolidKind[] directions = [SolidKind.Plane, SolidKind.Edge, SolidKind.Cylinder, SolidKind.Hole, SolidKind.SetUp];
        return kind switch
        {
            SolidReadingKind.Distance or SolidReadingKind.OverHoles or SolidReadingKind.BetweenHoles => (places, places),
            SolidReadingKind.LengthAlongEdge => ([SolidKind.Edge], []),
            SolidReadingKind.PointToEdge => (places, [SolidKind.Edge, SolidKind.Cylinder]),
            SolidReadingKind.HoleToEdge => ([SolidKind.Hole, SolidKind.Point], [SolidKind.Edge]),
            SolidReadingKind.AcrossEdges => ([SolidKind.Edge], [SolidKind.Edge]),
            SolidReadingKind.PointToPlane => (places, plane),
            SolidReadingKind.NearSideToPlane or SolidReadingKind.FarSideToPlane => (rounds, plane),
            SolidReadingKind.Depth or SolidReadingKind.Thickness => (plane, plane),
            SolidReadingKind.Height => ([SolidKind.Point, SolidKind.Hole, SolidKind.Plane], plate),
            SolidReadingKind.HeightOverPin or SolidReadingKind.HeightUnderPin => (rounds, plate),
            SolidReadingKind.Diameter => (rounds, []),
            SolidReadingKind.OnFace => (places, plane),
            SolidReadingKind.On => ([SolidKind.Point, SolidKind.Hole, SolidKind.Edge], [SolidKind.Plane, SolidKind.Edge, SolidKind.Cylinder, SolidKind.Hole]),
            _ => (directions, directions),
        };
    }

    static SolidFeature Find(Dictionary<string, SolidFeature> features, string id, string where)
    {
        if (!features.TryGetValue(id, out var feature)) Refuse($"{where}: there is no feature {id}; known are {string.Join(", ", features.Keys.Take(12))}");
        return feature!;
    }

    static string Any(SolidKind[] kinds) => string.Join(" or ", kinds.Select(Named));

    static string Named(SolidKind kind) => kind switch
    {
        SolidKind.Point => "a corner",
        SolidKind.Hole => "a hole",
        SolidKind.Plane => "a face",
        SolidKind.Edge => "an edge",
        SolidKind.Cylinder => "a cylinder",
        _ => "a set-up",
    };

    static string Named(SolidReadingKind kind) =>
        string.Concat(kind.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));

    [System.Diagnostics.CodeAnalysis.DoesNotReturn]
    static void Refuse(string sentence) => throw new RefusedException(new Refusal(sentence + "."));
}
