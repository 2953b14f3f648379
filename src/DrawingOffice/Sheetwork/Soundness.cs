using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>What must hold for faces and bends to make a part; each failing is a sentence.</summary>
static class Soundness
{
    /// <summary>Chord error at which outlines are tested for meeting themselves and openings for lying inside, mm.</summary>
    const double ChordError = 0.01;

    public static Refusal? OfFaces(IReadOnlyList<Face> faces)
    {
        if (faces.Count == 0) return Refusal.Of("faces", null, "give at least one face");
        if (faces.Count > FaceTree.MostFaces) return Refusal.Of("faces", $"{faces.Count}", $"at most {FaceTree.MostFaces} faces");
        var (ids, openings) = (new HashSet<string>(), new HashSet<string>());
        foreach (var face in faces)
        {
            if (face.Id.Length == 0) return Refusal.Of("face", null, "give every face a name");
            if (!ids.Add(face.Id)) return Refusal.Of("face", face.Id, "this name is used twice; give each face its own");
            foreach (var opening in face.Openings)
                if (!openings.Add(opening.Id)) return Refusal.Of($"face {face.Id}, opening", opening.Id, "this name is used twice; give each opening its own");
            if (OfFace(face) is { } refusal) return refusal;
        }
        return null;
    }

    /// <summary>Its outline, its openings, and the openings within the outline.</summary>
    public static Refusal? OfFace(Face face)
    {
        if (OfOutline($"face {face.Id}, outline", face.Outline) is { } bad) return bad;
        foreach (var opening in face.Openings)
            if (OfOutline($"face {face.Id}, opening {opening.Id}", opening.Edge) is { } badEdge) return badEdge;
        return OfOpenings(face);
    }

    static Refusal? OfOutline(string field, Loop loop)
    {
        if (loop.Count < 2) return Refusal.Of(field, $"{loop.Count} corners", "give at least three corners");
        foreach (var c in loop.Corners)
        {
            if (!(Math.Abs(c.At.X) <= Largest && Math.Abs(c.At.Y) <= Largest)) return Refusal.Of(field, $"{c.At.X}, {c.At.Y}", "every corner needs two numbers in mm, at most 100 m from the origin");
            if (c.Bulge != 0 && !(Math.Abs(c.Bulge) is >= 1e-7 and <= 1e4)) return Refusal.Of(field, $"bulge {c.Bulge}", "give an arc that can be told from a straight side and from a whole circle");
        }
        if (!(loop.SignedArea > OnSideArea)) return Refusal.Of(field, $"area {loop.SignedArea:0.###} mm²", "go round the corners anticlockwise; they must enclose some metal");
        if (Crossings.Of(loop.Flatten(ChordError).AsSpan(), 1) is [var at, ..])
            return Refusal.Of(field, $"side through {at.At.X:0.###}, {at.At.Y:0.###}", "the outline must not cross or touch itself");
        return null;
    }

    /// <summary>Nothing made of sheet here is larger, mm; beyond it rounding would be seen.</summary>
    public const double Largest = 1e5;

    // An outline this small is a slip of the pen: a thousandth of a millimetre square.
    const double OnSideArea = 1e-6;

    static Refusal? OfOpenings(Face face)
    {
        var outline = face.Outline.Flatten(ChordError);
        var edges = face.Openings.Select(o => o.Edge.Flatten(ChordError)).ToList();
        for (var i = 0; i < edges.Count; i++)
        {
            var field = $"face {face.Id}, opening {face.Openings[i].Id}";
            if (!Plane2.Contains(outline.AsSpan(), edges[i][0]) || Meets(edges[i].AsSpan(), outline.AsSpan()))
                return Refusal.Of(field, "its place", "it must lie inside the flat of its face; a notch belongs to the outline, a hole in a bend to neither");
            for (var j = 0; j < i; j++)
                if (Meets(edges[i].AsSpan(), edges[j].AsSpan()) || Plane2.Contains(edges[j].AsSpan(), edges[i][0]) || Plane2.Contains(edges[i].AsSpan(), edges[j][0]))
                    return Refusal.Of(field, "its place", $"it overlaps opening {face.Openings[j].Id}");
        }
        return null;
    }

    static bool Meets(ReadOnlySpan<Vec2> a, ReadOnlySpan<Vec2> b)
    {
        for (int i = 0, j = a.Length - 1; i < a.Length; j = i++)
            for (int k = 0, l = b.Length - 1; k < b.Length; l = k++)
                if (Plane2.Touch(a[j], a[i], b[l], b[k], Crossings.Touch)) return true;
        return false;
    }

    public static Parsed<Joint> Join(Bend bend, int index, int parent, Face parentFace, Face child)
    {
        var name = $"bend {bend.Parent} to {bend.Child}";
        if (!double.IsFinite(bend.Angle) || bend.Angle == 0 || Math.Abs(bend.Angle) > Math.PI)
            return Refusal.Of($"{name}, angle", $"{bend.Angle * 180 / Math.PI:0.###}°", "give the bend from flat, up to 180° either way and not 0");
        if (!(bend.InsideRadius is >= 0 and <= Largest))
            return Refusal.Of($"{name}, radius", $"{bend.InsideRadius}", "give the inside radius in mm, 0 or more");
        if (!(bend.Length > FaceTree.OnSide)) return Refusal.Of($"{name}, length", $"{bend.Length:0.###}", "from and to must be apart");
        var side = SideOf(parentFace.Outline, bend.From, bend.To);
        if (side < 0) return Refusal.Of(name, $"{bend.From.X:0.###}, {bend.From.Y:0.###}", "from and to must lie on one straight side of the parent, in the order of walking it anticlockwise");
        // The bend must lie within the child's side too; the child may be wider.
        var childSide = SideOf(child.Outline, Vec2.Zero, new(bend.Length, 0));
        if (childSide < 0) return Refusal.Of(name, child.Id, $"the child needs a straight side on its x axis from 0 to {bend.Length:0.###} mm");
        return new Joint(index, parent, side, bend.From.DistanceTo(parentFace.Outline.Start(side)), childSide);
    }

    /// <summary>The straight side that holds both points in the order of the walk; −1 when none does.</summary>
    public static int SideOf(Loop loop, Vec2 from, Vec2 to)
    {
        for (var i = 0; i < loop.Count; i++)
        {
            if (!loop.Straight(i) || (loop.End(i) - loop.Start(i)).Dot(to - from) <= 0) continue;
            if (Plane2.Distance(from, loop.Start(i), loop.End(i)) <= FaceTree.OnSide && Plane2.Distance(to, loop.Start(i), loop.End(i)) <= FaceTree.OnSide) return i;
        }
        return -1;
    }

    public static Refusal? OfSharedSides(IReadOnlyList<Joint> joints, IReadOnlyList<Bend> bends, IReadOnlyList<Face> faces)
    {
        foreach (var j in joints)
        {
            if (j.Parent > 0 && joints[j.Parent - 1].ChildSide == j.Side)
                return Refusal.Of($"bend {bends[j.Bend].Parent} to {bends[j.Bend].Child}", faces[j.Parent].Id, "it lies on the side by which its parent itself is folded on");
        }
        foreach (var onSide in joints.GroupBy(j => (j.Parent, j.Side)))
        {
            var end = double.NegativeInfinity;
            foreach (var j in onSide.OrderBy(j => j.Start))
            {
                if (j.Start < end - FaceTree.OnSide)
                    return Refusal.Of($"bend {bends[j.Bend].Parent} to {bends[j.Bend].Child}", "its place", "it overlaps another bend on the same side");
                end = j.Start + bends[j.Bend].Length;
            }
        }
        return null;
    }
}
