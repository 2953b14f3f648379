using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>What must hold of a pressing's figures and names; each failing is a sentence, thrown.</summary>
static class PressingCheck
{
    public static void Figures(Pressing p)
    {
        if (!(p.Thickness is > 0 and <= FaceTree.Thickest)) throw ModelMaker.Refused("thickness", $"{p.Thickness}", $"give the sheet's thickness in mm, more than 0 and at most {FaceTree.Thickest}");
        if (!(p.InsideRadius is >= 0 and <= 1000)) throw ModelMaker.Refused("inside_radius", $"{p.InsideRadius}", "give the inside radius of the folds in mm, 0 or more");
        if (!(p.FlatWithin is >= 0 and <= 5)) throw ModelMaker.Refused("flat_within", $"{p.FlatWithin}", "give 0 to 5 mm");
        if (p.Faces.Length is 0 or > FaceModel.MostFaces) throw ModelMaker.Refused("faces", $"{p.Faces.Length}", $"give 1 to {FaceModel.MostFaces} faces");
        foreach (var x in p.Points)
        {
            if (!(Math.Abs(x.At.X) <= Largest && Math.Abs(x.At.Y) <= Largest && Math.Abs(x.At.Z) <= Largest)) throw ModelMaker.Refused($"point {x.Name}", $"{x.At}", "give x, y and z in mm, at most 100 m");
            if (!(x.Std.X >= 0 && x.Std.Y >= 0 && x.Std.Z >= 0 && x.Std.Length < Largest)) throw ModelMaker.Refused($"point {x.Name}, plus_minus", $"{x.Std}", "give 0 or more, mm");
        }
        var n = 3 * p.Points.Length;
        if (p.Covariance.Length != 0 && p.Covariance.Length != n * n) throw ModelMaker.Refused("covariance", $"{p.Covariance.Length} figures", $"give {n} rows of {n}");
    }

    const double Largest = 1e5;

    /// <summary>A row of spots is no longer than its face anywhere.</summary>
    public static void Rows(Pressing p, ImmutableArray<ImmutableArray<int>> rings)
    {
        foreach (var s in p.Spots)
        {
            var ring = rings[p.Faces.ToList().FindIndex(f => f.Name == s.Face)];
            var longest = ring.Max(a => ring.Max(b => p.Points[a].At.DistanceTo(p.Points[b].At)));
            if (s.Row > longest + p.FlatWithin) throw ModelMaker.Refused($"spots {s.Name}, row", $"{s.Row:0.###} mm", $"face {s.Face} is {longest:0.#} mm from corner to corner; give at most that");
        }
    }

    public static Dictionary<string, int> Index(Pressing p)
    {
        var index = new Dictionary<string, int>();
        for (var i = 0; i < p.Points.Length; i++)
            if (p.Points[i].Name.Length == 0 || !index.TryAdd(p.Points[i].Name, i)) throw ModelMaker.Refused("point", p.Points[i].Name, "give each point its own name");
        var faces = new HashSet<string>();
        foreach (var f in p.Faces)
            if (f.Name.Length == 0 || !faces.Add(f.Name)) throw ModelMaker.Refused("face", f.Name, "give each face its own name");
        foreach (var w in p.Wishes)
            foreach (var name in new[] { w.First, w.Second })
                if (!faces.Contains(name)) throw ModelMaker.Refused("joint", name, "name two of the faces");
        foreach (var s in p.Spots)
        {
            if (!faces.Contains(s.Face)) throw ModelMaker.Refused($"spots {s.Name}, face", s.Face, "name one of the faces");
            if (s.Spots < 1 || !(s.Row > 0) || !(s.Thinner > 0)) throw ModelMaker.Refused($"spots {s.Name}", $"{s.Spots} in {s.Row:0.###} mm of {s.Thinner:0.###} mm sheet", "give how many, the length of their row and the thinner sheet, all more than 0");
        }
        return index;
    }

    /// <summary>Rings by index; a ring that ends where it began loses the doubled end.</summary>
    public static ImmutableArray<ImmutableArray<int>> Rings(Pressing p, Dictionary<string, int> index) =>
        [.. p.Faces.Select(f => Ring($"face {f.Name}, ring", f.Ring, p, index))];

    static ImmutableArray<int> Ring(string field, ImmutableArray<string> names, Pressing p, Dictionary<string, int> index)
    {
        var ring = names.Select(n => index.TryGetValue(n, out var i) ? i : throw ModelMaker.Refused(field, n, "name one of the points")).ToList();
        if (ring.Count > 1 && ring[0] == ring[^1]) ring.RemoveAt(ring.Count - 1);
        if (ring.Count < 3) throw ModelMaker.Refused(field, string.Join(", ", names), "it does not close round a face; name at least three points in order");
        if (ring.GroupBy(i => i).FirstOrDefault(g => g.Count() > 1) is { } twice) throw ModelMaker.Refused(field, p.Points[twice.Key].Name, "the ring goes through this point twice");
        for (var i = 0; i < ring.Count; i++)
            if (p.Points[ring[i]].At.DistanceTo(p.Points[ring[(i + 1) % ring.Count]].At) < Apart)
                throw ModelMaker.Refused(field, $"{p.Points[ring[i]].Name}, {p.Points[ring[(i + 1) % ring.Count]].Name}", "these two points are in one place; name one");
        var at = ring.Select(i => p.Points[i].At).ToArray();
        var plane = Plane.Through(at);
        if (plane.Spread.First < Apart * Apart) throw ModelMaker.Refused(field, string.Join(", ", names), "its points lie on one line; a face needs breadth");
        return [.. ring];
    }

    // Nothing is measured nearer on sheet.
    const double Apart = 0.01;

    public static void Outlines(Pressing p, ImmutableArray<Vec2>[] outlines)
    {
        for (var f = 0; f < outlines.Length; f++)
            if (Crossings.Of(outlines[f].AsSpan(), 1) is [var at, ..])
                throw ModelMaker.Refused($"face {p.Faces[f].Name}, ring", $"side after {p.Faces[f].Ring[at.First % p.Faces[f].Ring.Length]}", "the ring crosses itself; name the points in order round the face");
    }

    public static ImmutableArray<Opening> Openings(PressingFace face, Motion3 frame, ImmutableArray<Vec2> outline, ImmutableArray<Vec3> points, Dictionary<string, int> index)
    {
        var openings = ImmutableArray.CreateBuilder<Opening>();
        foreach (var h in face.Holes)
        {
            if (!(h.Diameter > 0)) throw ModelMaker.Refused($"hole {h.Name}, diameter", $"{h.Diameter}", "give more than 0 mm");
            openings.Add(new RoundHole(h.Name, ModelMaker.Flat(frame, h.At), h.Diameter));
        }
        foreach (var s in face.Slots)
        {
            var (a, b) = (ModelMaker.Flat(frame, s.From), ModelMaker.Flat(frame, s.To));
            if (!(s.Width > 0) || a.DistanceTo(b) < Apart) throw ModelMaker.Refused($"slot {s.Name}", $"width {s.Width}", "give a width over 0 and two ends apart");
            openings.Add(new Slot(s.Name, 0.5 * (a + b), s.Width, a.DistanceTo(b) + s.Width, (b - a).Angle));
        }
        for (var i = 0; i < face.CutOuts.Length; i++)
        {
            var ring = face.CutOuts[i].Select(n => index.TryGetValue(n, out var k) ? ModelMaker.Flat(frame, points[k]) : throw ModelMaker.Refused($"face {face.Name}, cut-out", n, "name one of the points")).ToArray();
            if (ring.Length < 3) throw ModelMaker.Refused($"face {face.Name}, cut-out", $"{ring.Length} points", "name at least three");
            openings.Add(new CutOut($"{face.Name} cut-out {i + 1}", Loop.Of(Plane2.SignedArea(ring) < 0 ? [.. ring.Reverse()] : ring)));
        }
        var tried = new Face(face.Name, Loop.Of(outline.AsSpan()), openings.ToImmutable());
        return Soundness.OfFace(tried) is { } refusal ? throw new RefusedException(refusal) : tried.Openings;
    }
}
