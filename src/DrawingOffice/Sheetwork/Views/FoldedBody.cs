using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// The folded part as a closed body: both surfaces of every face, the curved surfaces of every bend, and the cut edges all round.
/// Arcs are followed by chords within a stated error. Round reliefs at corners are cut in the blank only and not shown.
/// </summary>
public sealed class FoldedBody
{
    readonly FaceTree _tree;
    readonly double _error;
    readonly ImmutableArray<Motion3> _frames;
    readonly ImmutableArray<Facet>.Builder _facets = ImmutableArray.CreateBuilder<Facet>();
    readonly ImmutableArray<Rim>.Builder _rims = ImmutableArray.CreateBuilder<Rim>();

    FoldedBody(FaceTree tree, double error) => (_tree, _error, _frames) = (tree, error, Fold.Frames(tree));

    /// <param name="error">Greatest distance of a chord from its arc, mm.</param>
    /// <param name="relief">Notches to show; null shows the tree as it is.</param>
    public static Body Of(FaceTree tree, double error = 0.02, Relief? relief = null)
    {
        var cut = relief is null ? tree : ReliefNotches.Cut(tree, relief).Tree;
        var made = new FoldedBody(cut, error);
        for (var i = 0; i < cut.Faces.Length; i++) made.Face(i);
        foreach (var joint in cut.Joints) made.BendSurfaces(joint);
        return new(made._facets.ToImmutable(), made._rims.ToImmutable());
    }

    double Half => _tree.Thickness / 2;

    void Face(int i)
    {
        var face = _tree.Faces[i];
        var outline = Outline(i, out var bendSides);
        var holes = face.Openings.Select(o => o.Edge.Flatten(_error)).ToList();
        foreach (var height in new[] { Half, -Half })
        {
            var loops = holes.Select(h => Raised(i, h.Reverse(), height)).Prepend(Raised(i, outline, height));
            _facets.Add(new([.. height > 0 ? loops : loops.Select(l => l.Reverse().ToImmutableArray())]));
        }
        for (var k = 0; k < outline.Length; k++)
            if (!bendSides.Contains(k)) Wall(i, outline[k], outline[(k + 1) % outline.Length]);
        foreach (var h in holes)
            for (var k = 0; k < h.Length; k++) Wall(i, h[(k + 1) % h.Length], h[k]);
        foreach (var hole in face.Openings.OfType<RoundHole>())
            foreach (var height in new[] { Half, -Half }) _rims.Add(new(_frames[i].Map(hole.At, height), _frames[i].Z, hole.Diameter / 2));
    }

    ImmutableArray<Vec3> Raised(int face, IEnumerable<Vec2> points, double height) => [.. points.Select(p => _frames[face].Map(p, height))];

    void Wall(int face, Vec2 a, Vec2 b) =>
        _facets.Add(Facet.Of(_frames[face].Map(a, -Half), _frames[face].Map(b, -Half), _frames[face].Map(b, Half), _frames[face].Map(a, Half)));

    /// <summary>The outline by chords with the ends of its bends among its corners, and which of its sides are bends.</summary>
    ImmutableArray<Vec2> Outline(int face, out HashSet<int> bendSides)
    {
        var loop = _tree.Faces[face].Outline;
        var onSide = _tree.Joints.Where(j => j.Parent == face).OrderBy(j => j.Start).ToLookup(j => j.Side, j => (_tree.Bends[j.Bend].From, _tree.Bends[j.Bend].To));
        var own = face > 0 ? _tree.Joints[face - 1].ChildSide : -1;
        var points = new List<Vec2>();
        bendSides = [];
        for (var side = 0; side < loop.Count; side++)
        {
            AddApart(points, loop.Start(side));
            if (!loop.Straight(side))
            {
                var between = ImmutableArray.CreateBuilder<Vec2>();
                Arc.Of(loop.Start(side), loop.End(side), loop.Corners[side].Bulge).AddBetween(between, _error);
                points.AddRange(between);
            }
            IEnumerable<(Vec2 From, Vec2 To)> lines = side == own ? [(Vec2.Zero, new(_tree.Bends[face - 1].Length, 0))] : onSide[side];
            foreach (var (from, to) in lines)
            {
                AddApart(points, from);
                bendSides.Add(points.Count - 1);
                AddApart(points, to);
            }
        }
        if (points[0].DistanceTo(points[^1]) <= Body.Same) points.RemoveAt(points.Count - 1);
        return [.. points];
    }

    static void AddApart(List<Vec2> points, Vec2 p)
    {
        if (points.Count == 0 || points[^1].DistanceTo(p) > Body.Same) points.Add(p);
    }

    void BendSurfaces(Joint joint)
    {
        var b = _tree.Bends[joint.Bend];
        var frame = _frames[joint.Parent];
        var n = Arc.Chords(b.InsideRadius + _tree.Thickness, b.Angle, _error);
        for (var k = 0; k < n; k++)
        {
            var (here, next) = ((double)k / n, (k + 1.0) / n);
            Vec3 At(Vec2 end, double share, double height) => frame.Map(OnArc(b, end, share * b.Angle, height));
            void Patch(Vec2 p, Vec2 q, double height, bool flip)
            {
                Vec3[] four = [At(p, here, height), At(p, next, height), At(q, next, height), At(q, here, height)];
                // A sharp inside bend has no inside surface.
                if (four[0].DistanceTo(four[1]) <= Body.Same) return;
                if (flip) Array.Reverse(four);
                _facets.Add(Facet.Of(four));
            }
            Patch(b.From, b.To, Half, flip: false);
            Patch(b.From, b.To, -Half, flip: true);
            Cheek(At(b.From, next, -Half), At(b.From, next, Half), At(b.From, here, Half), At(b.From, here, -Half));
            Cheek(At(b.To, here, -Half), At(b.To, here, Half), At(b.To, next, Half), At(b.To, next, -Half));
        }
    }

    void Cheek(Vec3 a, Vec3 b, Vec3 c, Vec3 d)
    {
        if (b.DistanceTo(c) <= Body.Same) _facets.Add(Facet.Of(a, b, d));
        else if (a.DistanceTo(d) <= Body.Same) _facets.Add(Facet.Of(a, b, c));
        else _facets.Add(Facet.Of(a, b, c, d));
    }

    /// <summary>A point of the bend in the parent's frame: beyond a bend end by an angle, at a height over mid-thickness.</summary>
    Vec3 OnArc(Bend b, Vec2 end, double turn, double height)
    {
        var rho = b.InsideRadius + Half;
        var (s, c) = Math.SinCos(turn);
        var up = Math.Sign(b.Angle);
        var radius = rho - up * height;
        return new Vec3(end.X, end.Y, up * rho) + new Vec3(b.Out.X, b.Out.Y, 0) * (radius * Math.Abs(s)) - new Vec3(0, 0, up * radius * c);
    }
}
