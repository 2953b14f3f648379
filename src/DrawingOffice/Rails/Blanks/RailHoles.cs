using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Puts holes true on the blank and on the formed rail.</summary>
static class RailHoles
{
    /// <summary>Openings are tested by chords this near, mm.</summary>
    const double ChordError = 0.02;

    public static Parsed<(ImmutableArray<PlacedHole> Holes, ImmutableArray<Caution> Cautions)> Of(RailForm form)
    {
        if (form.Rail.Holes.Length == 0) return (ImmutableArray<PlacedHole>.Empty, ImmutableArray<Caution>.Empty);
        var faces = new Dictionary<RailFace, FaceFlat>();
        var placed = ImmutableArray.CreateBuilder<PlacedHole>(form.Rail.Holes.Length);
        var cautions = ImmutableArray.CreateBuilder<Caution>();
        var ids = new HashSet<string>();
        var rims = new List<(RailFace Face, Vec2[] Rim, Vec2 Middle, double Reach)>();
        foreach (var hole in form.Rail.Holes)
        {
            var name = $"hole {hole.Id}";
            if (!ids.Add(hole.Id)) return Refusal.Of(name, hole.Id, "this name is used twice; give each hole its own");
            if (!faces.TryGetValue(hole.Face, out var face))
            {
                if (FaceFlat.Of(form, hole.Face) is not { } found) return Refusal.Of($"{name}, face", Words(hole.Face), "this rail has no such face");
                faces.Add(hole.Face, face = found);
            }
            if (!(hole.At >= form.Rail.Stations[0].At && hole.At <= form.Rail.Stations[^1].At))
                return Refusal.Of($"{name}, at", $"{hole.At:0.###}", $"the rail runs from {form.Rail.Stations[0].At:0.##} to {form.Rail.Stations[^1].At:0.##} mm");
            var at = face.Edge is null ? OnWeb(form, hole) : OnFlange(form, face.Edge, hole);
            Vec2[] rim = [.. at.OnBlank.Edge.Flatten(ChordError)];
            if (Wrong(form, face, at, rim, name) is { } refusal) return refusal;
            var middle = 0.5 * (rim[0] + rim[rim.Length / 2]);
            var reach = rim.Max(p => p.DistanceTo(middle));
            foreach (var other in rims)
                if (other.Face == hole.Face && other.Middle.DistanceTo(middle) < other.Reach + reach && Meets(other.Rim, rim))
                    return Refusal.Of($"{name}, at", $"{hole.At:0.###}", "it runs into another hole of the same face; move one of them");
            rims.Add((hole.Face, rim, middle, reach));
            placed.Add(at);
            cautions.AddRange(Told(form, face, at, rim));
        }
        return (placed.MoveToImmutable(), cautions.ToImmutable());
    }

    static PlacedHole OnWeb(RailForm form, RailHole hole)
    {
        double Mark(Mould m) => Between.Read(form.Rail.Stations, s => s.At, m.Marks, hole.At);
        var (low, high) = (form.LowerMould.Course.At(Mark(form.LowerMould)), form.UpperMould.Course.At(Mark(form.UpperMould)));
        var up = (high - low).Unit;
        var at = hole.From switch
        {
            AcrossFrom.Edge => low + up * hole.Across,
            AcrossFrom.FarEdge => high - up * hole.Across,
            _ => 0.5 * (low + high) + up * hole.Across,
        };
        var pose = new Pose2(at, -up.Left);
        var standing = form.Stand(hole.At, at);
        Vec3 Turned(Vec2 d) => standing.Along * d.X + standing.Up * d.Y;
        return new(hole, hole.Shape.Moved(pose), new(Turned(pose.X), Turned(up), standing.Eye, standing.At), hole.At, (at - low).Length, 0);
    }

    static PlacedHole OnFlange(RailForm form, FoldEdge edge, RailHole hole)
    {
        var shape = edge.Shape!;
        var along = edge.AlongAt(hole.At);
        var (flange, lip) = (edge.FlangeAt(along), edge.LipAt(along));
        var onLip = hole.Face is RailFace.LowerLip or RailFace.UpperLip;
        // Outside sizes run from the mould line, a setback before the flat begins.
        var (begin, size) = onLip ? (shape.Allowance + shape.Flat(flange) + shape.LipAllowance - shape.LipSetback, lip) : (shape.Allowance - shape.Setback, flange);
        var flat = begin + hole.From switch { AcrossFrom.Edge => hole.Across, AcrossFrom.FarEdge => size - hole.Across, _ => size / 2 + hole.Across };
        var place = edge.Place(along);
        var pose = new Pose2(place.At + place.Out * flat, place.Along);
        var (at, square) = form.Stand(edge, along, place, flat);
        var standing = form.Stand(hole.At, place.At);
        var x = standing.Along * place.Along.X + standing.Up * place.Along.Y;
        var part = edge.Parts.FirstOrDefault(p => along <= p.To, edge.Parts[^1]);
        var strain = part.InCrease ? 0 : StrainMap.At(form, edge, part, along, flat);
        return new(hole, hole.Shape.Moved(pose), new(x, square.Cross(x), square, at), along, flat, strain);
    }

    static Refusal? Wrong(RailForm form, FaceFlat face, PlacedHole at, Vec2[] rim, string name)
    {
        var outline = face.Outline.AsSpan();
        foreach (var p in rim)
        {
            if (Plane2.Contains(outline, p)) continue;
            var (fold, end, free) = (face.FromFold([p]), face.FromEnd([p]), face.FromFreeEdge([p]));
            if (end < Math.Min(fold, free))
                return Refusal.Of($"{name}, at", $"{at.Hole.At:0.###}", $"it runs over the end of the {Words(at.Hole.Face)}; the rail runs from {form.Rail.Stations[0].At:0.##} to {form.Rail.Stations[^1].At:0.##} mm, move the hole along it");
            return Refusal.Of($"{name}, across", $"{at.Hole.Across:0.###}", fold < free
                ? $"it lies across a bend of the {Words(at.Hole.Face)}; move it onto the flat"
                : $"it lies off the {Words(at.Hole.Face)}; move it within");
        }
        for (var i = 0; i < form.Plan.Count; i++)
            if (form.Plan.Creases[i] && rim.Max(p => p.X) > form.Plan.StartOf(i) && rim.Min(p => p.X) < form.Plan.StartOf(i) + form.Plan.Flats[i])
                return Refusal.Of($"{name}, at", $"{at.Hole.At:0.###}", "it lies across a crease of the web; move it onto the flat");
        return null;
    }

    static IEnumerable<Caution> Told(RailForm form, FaceFlat face, PlacedHole at, Vec2[] rim)
    {
        var rail = form.Rail;
        var limit = 2.5 * rail.Thickness + rail.InsideRadius;
        var found = face.FromFold(rim) + Setback.Inside(face.Edge?.Shape!.Angle ?? form.Lower.Shape!.Angle, rail.InsideRadius);
        if (found < limit)
            yield return new(CautionKind.HoleNearBend, $"Hole {at.Hole.Id} is {found:0.0} mm from the inside of a bend; nearer than {limit:0.0} mm (2.5 T + R) it is pulled out of shape: drill it after folding or move it.", [at.Hole.Id], found, limit);
    }

    static bool Meets(Vec2[] a, Vec2[] b)
    {
        for (int i = 0, j = a.Length - 1; i < a.Length; j = i++)
            for (int k = 0, l = b.Length - 1; k < b.Length; l = k++)
                if (Plane2.Touch(a[j], a[i], b[l], b[k], Crossings.Touch)) return true;
        return Plane2.Contains(a, b[0]) || Plane2.Contains(b, a[0]);
    }

    public static string Words(RailFace face) => face switch
    {
        RailFace.Web => "web",
        RailFace.LowerFlange => "lower flange",
        RailFace.UpperFlange => "upper flange",
        RailFace.LowerLip => "lower lip",
        _ => "upper lip",
    };
}
