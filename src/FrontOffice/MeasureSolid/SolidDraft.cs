using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.Typed;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>A sample in space in the making: every feature and reading is checked as it is added, whichever file it comes from.</summary>
sealed class SolidDraft
{
    /// <summary>Past it an adjustment by hand-typed sheets takes minutes; a bracket has dozens.</summary>
    const int MostFeatures = 400, MostReadings = 4_000;

    readonly Dictionary<string, SolidFeature> _known = [];
    readonly ImmutableArray<SolidFeature>.Builder _features = ImmutableArray.CreateBuilder<SolidFeature>();
    readonly ImmutableArray<SolidReading>.Builder _readings = ImmutableArray.CreateBuilder<SolidReading>();
    readonly ImmutableArray<FlatFace>.Builder _faces = ImmutableArray.CreateBuilder<FlatFace>();

    public int NextIndex => _readings.Count;

    public void Add(SolidFeature f, Place place)
    {
        if (!(f.Id.Length is > 0 and <= 40 && f.Id.All(c => char.IsLetterOrDigit(c) || c is '-' or '.' or '_'))) throw place.Refuse("id", f.Id, "an id is 1 to 40 letters, digits, dashes, dots or underscores");
        if (_features.Count == MostFeatures) throw place.Refuse("features", $"{MostFeatures + 1}", $"at most {MostFeatures} can be adjusted together");
        if (_known.ContainsKey(f.Id)) throw place.Refuse("id", f.Id, "it is there already; give every feature an id of its own");
        if (f.Sketch is { } s && !(Math.Max(Math.Abs(s.X), Math.Max(Math.Abs(s.Y), Math.Abs(s.Z))) <= SampleDraft.Longest)) throw place.Refuse("x", $"{s.X} {s.Y} {s.Z}", $"a sketch lies within {SampleDraft.Longest:0} mm");
        if (f.SketchSize is { } size && !(size >= 0 && size <= SampleDraft.Longest)) throw place.Refuse("size", $"{size}", $"a sketch goes from 0 to {SampleDraft.Longest:0} mm");
        CheckTies(f, place);
        _known.Add(f.Id, f);
        _features.Add(f);
    }

    public void Add(SolidReading r, Place place)
    {
        var rule = SolidRule.Of(r.Kind);
        if (_readings.Count == MostReadings) throw place.Refuse("readings", $"{MostReadings + 1}", $"at most {MostReadings} can be adjusted together");
        Check("from", r.From, rule.From, rule, place);
        if (!rule.To.IsEmpty) Check("to", r.To, rule.To, rule, place);
        else if (r.To is not null) throw place.Refuse("to", r.To, $"{rule.One} has no second feature; leave it empty");
        if (r.From == r.To) throw place.Refuse("to", r.To, "name another feature than in from");
        if (rule.Kind == SolidReadingKind.LengthAlongEdge && !HasCorners(_known[r.From])) throw place.Refuse("from", r.From, $"{rule.One} needs its two end corners, and they are not named");
        if (r.At is { } at && Kind(at) is not (SolidKind.Point or SolidKind.Hole)) throw place.Refuse("at", at, $"name a corner or a hole of the part{Near(at)}");
        CheckLying(r, place);
        _readings.Add(r);
    }

    public void Add(FlatFace face, Place place)
    {
        if (!_known.TryGetValue(face.Plane, out var plane) || plane.Kind != SolidKind.Plane) throw place.Refuse("on face", face.Plane, $"name a face that is among the features{Near(face.Plane)}");
        _faces.Add(face);
    }

    public SolidSample Finish(string id, string title, Place end) => _features.Count == 0 ? throw end.Refuse("features", null, "name at least one feature of the part")
        : new SolidSample(id, title, _features.ToImmutable(), _readings.ToImmutable()) { Faces = _faces.ToImmutable() };

    bool HasCorners(SolidFeature f) => f.From is { } from && _known[from].Kind is SolidKind.Point or SolidKind.Hole;

    void CheckTies(SolidFeature f, Place place)
    {
        if (f.On is { } on)
        {
            if (f.Kind is not (SolidKind.Point or SolidKind.Hole or SolidKind.Edge)) throw place.Refuse("on", on, "a corner, hole or edge can lie on a face, other features cannot");
            if (Kind(on) != SolidKind.Plane) throw place.Refuse("on", on, $"name a face that stands before it{Near(on)}");
        }
        if (f is { From: null, To: null }) return;
        if (f.Kind != SolidKind.Edge) throw place.Refuse("from", f.From ?? f.To, "only an edge runs between two corners or two faces");
        if (f.From is not { } a || f.To is not { } b) throw place.Refuse(f.From is null ? "from" : "to", null, "give both corners, both faces or neither");
        if (a == b) throw place.Refuse("to", b, "an edge runs between two different corners or faces");
        var faces = Kind(a) == SolidKind.Plane;
        foreach (var (field, id) in new[] { ("from", a), ("to", b) })
            if (Kind(id) is not { } kind || (kind == SolidKind.Plane) != faces || kind is not (SolidKind.Plane or SolidKind.Point or SolidKind.Hole))
                throw place.Refuse(field, id, $"name two corners, or two faces, that stand before it{Near(id)}");
    }

    /// <summary>What lies somewhere by itself needs no reading to say so, and an edge lies on faces only.</summary>
    void CheckLying(SolidReading r, Place place)
    {
        if (r.To is not { } to) return;
        if (Kind(to) == SolidKind.Edge && (_known[to].From == r.From || _known[to].To == r.From)) throw place.Refuse("from", r.From, $"it is an end of {to} and lies on it by itself; leave the reading out");
        if (r.Kind is SolidReadingKind.On or SolidReadingKind.PointToPlane && _known[r.From].On == to) throw place.Refuse("to", to, $"{r.From} lies on it already, as its row among the features says; leave the reading out");
        if (r.Kind == SolidReadingKind.On && Kind(r.From) == SolidKind.Edge && Kind(to) != SolidKind.Plane) throw place.Refuse("to", to, "an edge can lie on a face only");
    }

    SolidKind? Kind(string id) => _known.TryGetValue(id, out var f) ? f.Kind : null;

    void Check(string field, string? id, ImmutableArray<SolidKind> wanted, SolidRule rule, Place place)
    {
        var kinds = string.Join(" or ", wanted.Select(SolidWords.One));
        if (id is null || Kind(id) is not { } kind) throw place.Refuse(field, id, $"name {kinds} that is among the features{Near(id)}");
        if (!wanted.Contains(kind)) throw place.Refuse(field, id, $"it is {SolidWords.One(kind)}, and {rule.Words} takes {kinds} here");
    }

    string Near(string? id) => _features.FirstOrDefault(f => string.Equals(f.Id, id?.Trim(), StringComparison.OrdinalIgnoreCase)) is { } near ? $", perhaps {near.Id}" : "";
}
