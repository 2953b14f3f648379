using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// Faces of the finished part that would be in the same place. A face meets another when part of its middle plane comes nearer to the
/// other's than half the two thicknesses as they lie, within the other's outline. Faces joined by a bend are not compared, the bends
/// themselves are not tested.
/// </summary>
static class Collide
{
    /// <summary>Faces may touch: this much, mm, is not a collision.</summary>
    const double Slack = 0.01;

    const double ChordError = 0.05;

    public static IEnumerable<Caution> Of(FaceTree tree)
    {
        var frames = Fold.Frames(tree);
        var slabs = tree.Faces.Select((f, i) => new Slab(f, frames[i])).ToImmutableArray();
        for (var i = 0; i < slabs.Length; i++)
            for (var j = i + 1; j < slabs.Length; j++)
            {
                if (tree.Joints[j - 1].Parent == i || !slabs[i].Near(slabs[j], tree.Thickness)) continue;
                if (Meets(slabs[i], slabs[j], tree.Thickness) || Meets(slabs[j], slabs[i], tree.Thickness))
                    yield return new(CautionKind.PartsCollide, $"Folded up, faces {tree.Faces[i].Id} and {tree.Faces[j].Id} would be in the same place.", [tree.Faces[i].Id, tree.Faces[j].Id]);
            }
    }

    static bool Meets(Slab a, Slab b, double thickness)
    {
        var reach = thickness / 2 * (1 + Math.Abs(a.Frame.Z.Dot(b.Frame.Z))) - Slack;
        var up = new Vec3(0, 0, 1);
        var local = a.Corners.Select(b.Frame.Local).ToList();
        var within = Clip3.Cut(local, [new(up, reach), new(up * -1, reach)]);
        if (within.Count < 3) return false;
        var flat = within.Select(p => new Vec2(p.X, p.Y)).ToArray();
        return Overlap(flat, b.Outline) && !b.Openings.Any(o => flat.All(p => Plane2.Contains(o.AsSpan(), p)));
    }

    static bool Overlap(Vec2[] a, ImmutableArray<Vec2> b)
    {
        if (a.Any(p => Plane2.Contains(b.AsSpan(), p)) || b.Any(p => Plane2.Contains(a, p))) return true;
        for (int i = 0, j = a.Length - 1; i < a.Length; j = i++)
            for (int k = 0, l = b.Length - 1; k < b.Length; l = k++)
                if (Plane2.Cross(a[j], a[i], b[l], b[k])) return true;
        return false;
    }

    sealed class Slab
    {
        public Slab(Face face, Motion3 frame)
        {
            (Frame, Outline) = (frame, face.Outline.Flatten(ChordError));
            Openings = [.. face.Openings.Select(o => o.Edge.Flatten(ChordError))];
            Corners = [.. Outline.Select(p => frame.Map(p))];
            _middle = Corners.Aggregate(Vec3.Zero, (s, p) => s + p) / Corners.Length;
            _radius = Corners.Max(p => p.DistanceTo(_middle));
        }

        public Motion3 Frame { get; }
        public ImmutableArray<Vec2> Outline { get; }
        public ImmutableArray<ImmutableArray<Vec2>> Openings { get; }
        public ImmutableArray<Vec3> Corners { get; }
        readonly Vec3 _middle;
        readonly double _radius;

        public bool Near(Slab o, double thickness) => _middle.DistanceTo(o._middle) <= _radius + o._radius + thickness;
    }
}
