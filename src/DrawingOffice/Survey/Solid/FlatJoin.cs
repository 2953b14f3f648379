using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>
/// Lays faces that were surveyed flat into the survey in space: each flat feature becomes one on the face, each flat reading its
/// counterpart, so that both surveys check one another. A corner of the same name in two faces is one corner.
/// </summary>
static class FlatJoin
{
    public static SolidSample Of(SolidSample sample)
    {
        if (sample.Faces.IsEmpty) return sample;
        var features = sample.Features.ToList();
        var readings = sample.Readings.ToList();
        foreach (var face in sample.Faces)
        {
            var place = Places(face, features);
            foreach (var f in face.Sample.Features) Join(face, f, features, readings, place);
            foreach (var r in face.Sample.Readings) readings.Add(Of(face, r) with { Index = readings.Count });
        }
        return sample with { Features = [.. features], Readings = [.. readings], Faces = [] };
    }

    static void Join(FlatFace face, Feature flat, List<SolidFeature> features, List<SolidReading> readings, Func<Vec2, Vec3>? place)
    {
        var kind = flat.Kind switch
        {
            FeatureKind.Point => SolidKind.Point,
            FeatureKind.Hole => SolidKind.Hole,
            FeatureKind.Edge => SolidKind.Edge,
            _ => throw Refused(face, flat.Id, $"a {(flat.Kind == FeatureKind.Slot ? "slot" : "arc")} cannot join a survey in space yet; give its end centres as holes or leave it out"),
        };
        var at = features.FindIndex(f => f.Id == flat.Id);
        if (at < 0)
        {
            features.Add(new SolidFeature(flat.Id, kind)
            {
                Sketch = flat.Sketch is { } s && place is not null ? place(s) : null,
                SketchDirection = flat.SketchTurn is { } t && place is not null ? place(Vec2.Polar(t)) - place(Vec2.Zero) : null,
                SketchSize = flat.SketchSize,
                From = flat.From,
                To = flat.To,
                On = kind == SolidKind.Edge && flat.From is not null ? null : face.Plane,
            });
            return;
        }
        var known = features[at];
        if (known.Kind != kind) throw Refused(face, flat.Id, "the survey in space has it as another kind; give it the same kind or another name");
        if (readings.Any(r => r.Kind == SolidReadingKind.On && r.From == flat.Id && r.To == face.Plane)) return;
        if (known.On == face.Plane || (kind == SolidKind.Edge && (flat.From is not null || known.From is not null))) return;
        if (known.On is null) features[at] = known with { On = face.Plane };
        else if (kind == SolidKind.Hole) throw Refused(face, flat.Id, $"the hole lies on face {known.On} already; one face can hold its mouth");
        else readings.Add(new SolidReading(readings.Count, SolidReadingKind.On, flat.Id, face.Plane, 0, 0) { FlatFace = face.Plane, FlatIndex = -1, Written = "corner of both faces" });
    }

    static SolidReading Of(FlatFace face, Reading r)
    {
        var kind = r.Kind switch
        {
            ReadingKind.CentreDistance => SolidReadingKind.Distance,
            ReadingKind.OutsideOverHoles => SolidReadingKind.OverHoles,
            ReadingKind.InsideBetweenHoles => SolidReadingKind.BetweenHoles,
            ReadingKind.EdgeToHole => SolidReadingKind.HoleToEdge,
            ReadingKind.CentreToEdge => SolidReadingKind.PointToEdge,
            ReadingKind.LengthAlongEdge => SolidReadingKind.LengthAlongEdge,
            ReadingKind.AcrossEdges => SolidReadingKind.AcrossEdges,
            ReadingKind.Diameter => SolidReadingKind.Diameter,
            ReadingKind.AngleBetweenEdges => SolidReadingKind.Angle,
            ReadingKind.Picked => SolidReadingKind.OnFace,
            ReadingKind.On => SolidReadingKind.On,
            ReadingKind.Parallel => SolidReadingKind.Parallel,
            ReadingKind.Square => SolidReadingKind.Square,
            _ => throw Refused(face, $"reading {r.Index + 1}", "a reading of this kind cannot join a survey in space yet; leave it out"),
        };
        return new SolidReading(0, kind, r.From, kind == SolidReadingKind.OnFace ? face.Plane : r.To, r.Value, r.Sigma)
        {
            ValueY = r.ValueY,
            Frame = kind == SolidReadingKind.OnFace ? r.Frame : "",
            Instrument = r.Instrument,
            Written = r.Written,
            FlatFace = face.Plane,
            FlatIndex = r.Index,
        };
    }

    /// <summary>From the flat sketch to space: laid on features sketched in both, or along the direction given; null where neither is known.</summary>
    static Func<Vec2, Vec3>? Places(FlatFace face, List<SolidFeature> features)
    {
        var plane = features.First(f => f.Id == face.Plane);
        if (plane.SketchDirection is not { Length: > 0 } direction) return null;
        var n = direction.Unit;
        var e1 = face.Along is { } along && (along - along.Dot(n) * n) is { Length: > 0 } x ? x.Unit : (Math.Abs(n.X) < 0.6 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0)).Cross(n).Unit;
        var e2 = n.Cross(e1);
        var both = (from f in face.Sample.Features
                    join s in features on f.Id equals s.Id
                    where f.Sketch is not null && s.Sketch is not null
                    select (Flat: f.Sketch!.Value, Solid: s.Sketch!.Value)).ToList();
        if (both.Count < 2 && face.Along is null) return null;
        var origin = both.Count > 0 ? both.Aggregate(Vec3.Zero, (a, b) => a + b.Solid) / both.Count : plane.Sketch ?? Vec3.Zero;
        var (shift, turn) = both.Count switch
        {
            0 => (-1 * Middle(face), 0),
            1 => (-1 * both[0].Flat, 0),
            _ => SolidStart.Laid([.. both.Select(b => (b.Flat, new Vec2(e1.Dot(b.Solid - origin), e2.Dot(b.Solid - origin))))]),
        };
        return p => p.Turned(turn) + shift is var q ? origin + q.X * e1 + q.Y * e2 : origin;
    }

    static Vec2 Middle(FlatFace face)
    {
        ImmutableArray<Vec2> places = [.. face.Sample.Features.Where(f => f.Sketch is not null).Select(f => f.Sketch!.Value)];
        return places.IsEmpty ? Vec2.Zero : places.Aggregate(Vec2.Zero, (a, b) => a + b) / places.Length;
    }

    static RefusedException Refused(FlatFace face, string what, string wanted) => new(new Refusal($"face {face.Plane}, {what}: {wanted}."));
}
