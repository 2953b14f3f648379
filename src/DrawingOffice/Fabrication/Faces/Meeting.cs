using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>Faces that run through one another, or along one another without saying so; refused by name.</summary>
static class Meeting
{
    /// <summary>Deeper than this one face runs into another, mm: over rounding and the flattening of measured points.</summary>
    const double Deep = 0.05;

    public static void Refuse(ImmutableArray<ModelFace> faces, ImmutableArray<Vec3> points)
    {
        for (var i = 0; i < faces.Length; i++)
            for (var k = 0; k < faces.Length; k++)
            {
                if (i == k) continue;
                if (Pierces(faces[i], faces[k], points) || i < k && Lies(faces[i], faces[k], points))
                    throw ModelMaker.Refused($"faces {faces[i].Name} and {faces[k].Name}", "their places", "they run through one another; a pressing's faces meet at edges only");
                if (i < k && Unnamed(faces[i], faces[k], points) is { } edge) throw edge;
            }
    }

    /// <summary>A side of one goes through the inside of the other.</summary>
    static bool Pierces(ModelFace a, ModelFace b, ImmutableArray<Vec3> points)
    {
        for (var s = 0; s < a.Ring.Length; s++)
        {
            var (p, q) = (b.Frame.Local(points[a.Ring[s]]), b.Frame.Local(points[a.Ring[(s + 1) % a.Ring.Length]]));
            if (Math.Min(p.Z, q.Z) > -Deep || Math.Max(p.Z, q.Z) < Deep) continue;
            var at = p + (q - p) * (p.Z / (p.Z - q.Z));
            if (Inside(b, new(at.X, at.Y))) return true;
        }
        return false;
    }

    static bool Inside(ModelFace face, Vec2 p) =>
        Plane2.Contains(face.Outline.AsSpan(), p) && Plane2.Distance(face.Outline.AsSpan(), p, p) > Deep && !face.Openings.Any(o => Plane2.Contains(o.Edge.Flatten(0.1).AsSpan(), p));

    /// <summary>Both in one plane and one over the other.</summary>
    static bool Lies(ModelFace a, ModelFace b, ImmutableArray<Vec3> points)
    {
        var local = a.Ring.Select(i => b.Frame.Local(points[i])).ToArray();
        if (local.Any(p => Math.Abs(p.Z) > Deep)) return false;
        var flat = local.Select(p => new Vec2(p.X, p.Y)).ToArray();
        return flat.Any(p => Inside(b, p)) || b.Outline.Any(p => Plane2.Contains(flat, p) && Plane2.Distance(flat, p, p) > Deep);
    }

    /// <summary>Free edges of both run along one line and no point says where they part.</summary>
    static RefusedException? Unnamed(ModelFace a, ModelFace b, ImmutableArray<Vec3> points)
    {
        foreach (var (p, q) in Free(a))
            foreach (var (r, s) in Free(b))
            {
                var (along, length) = ((points[q] - points[p]).Unit, points[p].DistanceTo(points[q]));
                var (t, u) = ((points[r] - points[p]).Dot(along), (points[s] - points[p]).Dot(along));
                var off = Math.Max((points[r] - points[p] - along * t).Length, (points[s] - points[p] - along * u).Length);
                if (off < Deep && Math.Min(length, Math.Max(t, u)) - Math.Max(0, Math.Min(t, u)) > 1)
                    return ModelMaker.Refused($"faces {a.Name} and {b.Name}", "an edge of one along an edge of the other", "name the points where they meet in both rings, so that the joint is known");
            }
        return null;

        static IEnumerable<(int, int)> Free(ModelFace f) => Enumerable.Range(0, f.Ring.Length).Where(s => f.Sides[s] < 0).Select(s => (f.Ring[s], f.Ring[(s + 1) % f.Ring.Length]));
    }
}
