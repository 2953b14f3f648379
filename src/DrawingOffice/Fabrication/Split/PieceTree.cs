using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>Some faces of a pressing that are folded out of one blank, as a face tree: folds take their setback, welded sides their fit.</summary>
static class PieceTree
{
    /// <param name="faces">Hang together by <paramref name="folded"/>, which close no ring.</param>
    public static Parsed<FaceTree> Of(FaceModel model, IReadOnlyList<int> faces, IReadOnlyCollection<int> folded)
    {
        var cut = new Dictionary<int, (ImmutableArray<Vec2> Corners, ImmutableArray<(Vec2 From, Vec2 To)> Sides)>();
        foreach (var f in faces)
        {
            var face = model.Faces[f];
            if (Inset.Of(face.Outline, [.. face.Sides.Select(j => j < 0 ? 0 : Setback(model, model.Joints[j], f, folded))]) is not { } inset)
                return Refusal.Of($"face {face.Name}", "its size", "the setbacks of its folds leave no flat between them");
            cut[f] = inset;
        }
        // The largest face lies still; the others hang on it.
        var root = faces.MaxBy(f => Math.Abs(Plane2.SignedArea(model.Faces[f].Outline.AsSpan())));
        var pose = new Dictionary<int, Pose2> { [root] = Pose2.Identity };
        var (bends, notches) = (new List<Bend>(), new List<(int Face, CornerNotch Notch)>());
        var queue = new Queue<int>([root]);
        while (queue.TryDequeue(out var parent))
            foreach (var j in folded.Select(i => model.Joints[i]).Where(j => j.First == parent || j.Second == parent))
            {
                var child = j.First == parent ? j.Second : j.First;
                if (pose.ContainsKey(child)) continue;
                var bend = Hang(model, j, parent, child, cut, pose, notches);
                if (!bend.Ok) return bend.Refusal!;
                bends.Add(bend.Value);
                queue.Enqueue(child);
            }
        var relief = Relief.Usual(model.Pressing.Thickness);
        var trees = faces.OrderBy(f => f != root).Select(f =>
        {
            var corners = notches.Where(n => n.Face == f).Aggregate(cut[f].Corners, (c, n) => n.Notch.Cut(c, relief));
            return new Face(model.Faces[f].Name, Loop.Of(corners.AsSpan()).Moved(pose[f]), [.. model.Faces[f].Openings.Select(o => o.Moved(pose[f]))]);
        });
        return FaceTree.Create(model.Pressing.Title, model.Pressing.Thickness, [.. trees], bends);
    }

    public static double Setback(FaceModel model, ModelJoint joint, int face, IReadOnlyCollection<int> folded)
    {
        var p = model.Pressing;
        if (folded.Contains(joint.Index)) return EdgeSetback.Folded(joint.Bend, joint.InsideRadius, p.Thickness, p.PointsOn);
        var gap = WeldRules.RootGap(joint, p.Thickness);
        if (WeldRules.Fit(joint, p.Thickness) == EdgeFit.EdgeToEdge) return EdgeSetback.EdgeToEdge(joint.Bend, p.Thickness, gap, p.PointsOn);
        return joint.First == face ? EdgeSetback.LappedThrough(joint.Bend, p.Thickness, p.PointsOn) : EdgeSetback.LappedAgainst(joint.Bend, p.Thickness, gap, p.PointsOn);
    }

    static Parsed<Bend> Hang(FaceModel model, ModelJoint j, int parent, int child,
        Dictionary<int, (ImmutableArray<Vec2> Corners, ImmutableArray<(Vec2 From, Vec2 To)> Sides)> cut, Dictionary<int, Pose2> pose, List<(int, CornerNotch)> notches)
    {
        var (p, c) = (model.Faces[parent], model.Faces[child]);
        var origin = model.Points[j.First == parent ? j.From : j.To];
        var along = (model.Points[j.First == parent ? j.To : j.From] - origin).Unit;
        double Place(ModelFace face, Vec2 at) => (face.Frame.Map(at) - origin).Dot(along);
        var (onParent, onChild) = (Line(p, cut[parent].Sides, j.Index), Line(c, cut[child].Sides, j.Index));
        var start = Math.Max(Place(p, onParent.From), Place(c, onChild.To));
        var end = Math.Min(Place(p, onParent.To), Place(c, onChild.From));
        if (end - start < Narrowest) return Refusal.Of($"joint {j.Name}", $"{Math.Max(0, end - start):0.#} mm of fold", "the setbacks of its neighbours leave no edge to fold along");
        var along2 = (onParent.To - onParent.From).Unit;
        Vec2 OnParent(double s) => onParent.From + along2 * (s - Place(p, onParent.From));
        var x = (onChild.To - onChild.From).Unit;
        // The child walks the edge the other way: its own x runs from the parent's end to its beginning.
        var zero = onChild.From + x * (Place(c, onChild.From) - end);
        pose[child] = new(-Back(zero, x), new(x.X, -x.Y));
        Vec2 OnChild(double s) => onChild.From + x * (Place(c, onChild.From) - s);
        notches.AddRange([(parent, new(onParent.From, OnParent(start), along2)), (parent, new(onParent.To, OnParent(end), along2)), (child, new(onChild.From, OnChild(end), x)), (child, new(onChild.To, OnChild(start), x))]);
        return new Bend(p.Name, pose[parent].Map(OnParent(start)), pose[parent].Map(OnParent(end)), c.Name, j.Bend, j.InsideRadius);
    }

    // Less than this is no fold, mm.
    const double Narrowest = 1;

    static Vec2 Back(Vec2 at, Vec2 x) => new(at.Dot(x), at.Dot(x.Left));

    /// <summary>The whole of a joint on a face, over all the sides that lie on it.</summary>
    static (Vec2 From, Vec2 To) Line(ModelFace face, ImmutableArray<(Vec2 From, Vec2 To)> sides, int joint)
    {
        var n = face.Sides.Length;
        var first = Enumerable.Range(0, n).First(s => face.Sides[s] == joint && face.Sides[(s + n - 1) % n] != joint);
        var last = first;
        while (face.Sides[(last + 1) % n] == joint) last = (last + 1) % n;
        return (sides[first].From, sides[last].To);
    }
}
