using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// A folded part seen as a pressing: its faces at mid-thickness, each carried square past its tangent lines to where it would meet the next.
/// Rounded corners become chords.
/// </summary>
public static class FromFolded
{
    const double ChordError = 0.05;

    public static Pressing Of(FaceTree tree)
    {
        var frames = Fold.Frames(tree);
        var points = new List<PressingPoint>();
        string Named(Vec3 at)
        {
            // Where two faces meet they come to the same point, to the rounding of a folded chain.
            var known = points.FindIndex(p => p.At.DistanceTo(at) < 1e-6);
            if (known >= 0) return points[known].Name;
            points.Add(new($"P{points.Count + 1}", at, Vec3.Zero));
            return points[^1].Name;
        }
        var faces = tree.Faces.Select((face, i) => new PressingFace(face.Id, [.. Walk(tree, i).Select(p => Named(frames[i].Map(p)))])
        {
            Holes = [.. face.Openings.OfType<RoundHole>().Select(h => new PressingHole(h.Id, frames[i].Map(h.At), h.Diameter))],
            Slots = [.. face.Openings.OfType<Slot>().Select(s => new PressingSlot(s.Id, frames[i].Map(s.At - s.Half), frames[i].Map(s.At + s.Half), s.Width))],
            CutOuts = [.. face.Openings.OfType<CutOut>().Select(c => c.Outline.Flatten(ChordError).Select(p => Named(frames[i].Map(p))).ToImmutableArray())],
        }).ToImmutableArray();
        return new(tree.Title, tree.Thickness, [.. points], faces)
        {
            Wishes = [.. tree.Bends.Select(b => new Wish(b.Parent, b.Child, JointWish.Free) { InsideRadius = b.InsideRadius })],
        };
    }

    static double Past(FaceTree tree, Bend b) => EdgeSetback.Folded(b.Angle, b.InsideRadius, tree.Thickness, PointsOn.Middle);

    /// <summary>Round a face in its own frame, out over each bend to where the middles meet.</summary>
    static IEnumerable<Vec2> Walk(FaceTree tree, int face)
    {
        var loop = tree.Faces[face].Outline;
        var corners = new List<Vec2>();
        for (var side = 0; side < loop.Count; side++)
        {
            Add(loop.Start(side));
            if (!loop.Straight(side))
            {
                var between = ImmutableArray.CreateBuilder<Vec2>();
                Arc.Of(loop.Start(side), loop.End(side), loop.Corners[side].Bulge).AddBetween(between, ChordError);
                corners.AddRange(between);
            }
            foreach (var (from, to, past) in Bends(tree, face, side))
            {
                var away = -(to - from).Unit.Left * past;
                Add(from);
                Add(from + away);
                Add(to + away);
                Add(to);
            }
        }
        if (corners[0].DistanceTo(corners[^1]) < 1e-9) corners.RemoveAt(corners.Count - 1);
        return corners;

        void Add(Vec2 p)
        {
            if (corners.Count == 0 || corners[^1].DistanceTo(p) > 1e-9) corners.Add(p);
        }
    }

    static IEnumerable<(Vec2 From, Vec2 To, double Past)> Bends(FaceTree tree, int face, int side)
    {
        foreach (var j in tree.Joints.Where(j => j.Parent == face && j.Side == side).OrderBy(j => j.Start))
            yield return (tree.Bends[j.Bend].From, tree.Bends[j.Bend].To, Past(tree, tree.Bends[j.Bend]));
        if (face > 0 && tree.Joints[face - 1].ChildSide == side)
            yield return (Vec2.Zero, new(tree.Bends[face - 1].Length, 0), Past(tree, tree.Bends[face - 1]));
    }
}
