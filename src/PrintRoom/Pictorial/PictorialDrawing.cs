using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Pictorial;

/// <param name="SmoothBelow">Neighbouring facets that turn by less than this are one curved surface: their edge is drawn only as a contour, radians.</param>
/// <param name="Hidden">Also draw what is hidden, dashed.</param>
public sealed record PictorialOptions(double SmoothBelow = 20 * Math.PI / 180, bool Hidden = false);

/// <summary>A body drawn on paper, mm, lower left corner at the origin.</summary>
public sealed record PictorialView(ImmutableArray<Mark> Marks, double Width, double Height)
{
    /// <param name="margin">Round the picture, mm.</param>
    public Sheet ToSheet(string title, double margin = 10) =>
        new(title, Width + 2 * margin, Height + 2 * margin, [.. Marks.Select(m => Move.By(m, new(margin, margin)))]);
}

/// <summary>Draws a closed body along parallel lines with hidden lines removed. Everything is computed here, so paper and screen agree.</summary>
public static class PictorialDrawing
{
    /// <param name="scale">mm on paper for a mm along a true axis of the view.</param>
    public static PictorialView Draw(Body body, Axonometry view, double scale = 1, PictorialOptions? options = null)
    {
        var rule = options ?? new();
        var eye = view with { Scale = view.Scale * scale };
        var facets = body.Facets.Select(f => new Facet([.. f.Loops.Select(l => l.Select(eye.Look).ToImmutableArray())])).ToArray();
        var normals = facets.Select(f => f.Normal).ToArray();
        var hide = new HiddenLines(facets, normals);
        var (seen, covered) = (new LineWork(), new LineWork());
        var rimWhole = new bool[body.Rims.Length];
        Array.Fill(rimWhole, true);
        foreach (var edge in BodyEdges.Of(body))
        {
            if (!Shown(edge, normals, rule.SmoothBelow, out var faces)) continue;
            var (a, b) = (eye.Look(edge.A), eye.Look(edge.B));
            var parts = faces ? hide.Seen(a, b) : [];
            if (edge.Rim >= 0 && parts is not [(0, 1)]) rimWhole[edge.Rim] = false;
            Share(seen, edge, a, b, parts);
            if (rule.Hidden) Share(covered, edge, a, b, Gaps(parts));
        }
        return Laid(body, eye, seen, covered, rimWhole);
    }

    /// <summary>Sharp edges and borders are shown, smooth ones only where one side turns away; two level facets have no edge between them.</summary>
    static bool Shown(in BodyEdge edge, Vec3[] normals, double smoothBelow, out bool faces)
    {
        var first = normals[edge.First];
        faces = first.Z > 0 || edge.Second < 0 || normals[edge.Second].Z > 0;
        if (edge.Second < 0) return true;
        var second = normals[edge.Second];
        var turn = Math.Atan2(first.Cross(second).Length, first.Dot(second));
        return turn > smoothBelow || turn > 1e-6 && first.Z > 0 != second.Z > 0;
    }

    static List<(double, double)> Gaps(List<(double From, double To)> parts)
    {
        var (gaps, at) = (new List<(double, double)>(), 0.0);
        foreach (var (from, to) in parts)
        {
            if (from > at) gaps.Add((at, from));
            at = to;
        }
        if (at < 1) gaps.Add((at, 1));
        return gaps;
    }

    static void Share(LineWork lines, in BodyEdge edge, Vec3 a, Vec3 b, List<(double From, double To)> parts)
    {
        foreach (var (from, to) in parts)
        {
            var (p, q) = (a + (b - a) * from, a + (b - a) * to);
            lines.Add(new(p.X, p.Y), new(q.X, q.Y), edge.Rim);
        }
    }

    static PictorialView Laid(Body body, Axonometry eye, LineWork seen, LineWork covered, bool[] rimWhole)
    {
        var points = body.Facets.SelectMany(f => f.Loops[0]).Select(eye.Look).ToList();
        if (points.Count == 0) return new([], 0, 0);
        var corner = new Vec2(points.Min(p => p.X), points.Min(p => p.Y));
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.AddRange(covered.Marks(corner, Layers.Hidden, Stroke.Hidden, _ => false));
        marks.AddRange(seen.Marks(corner, Layers.Outline, Stroke.Outline, rim => rimWhole[rim]));
        for (var i = 0; i < rimWhole.Length; i++)
            if (rimWhole[i] && seen.Holds(i)) marks.Add(Ellipse(body.Rims[i], eye, corner));
        return new(marks.ToImmutable(), points.Max(p => p.X) - corner.X, points.Max(p => p.Y) - corner.Y);
    }

    static EllipseMark Ellipse(Rim rim, Axonometry eye, Vec2 corner)
    {
        var centre = eye.Look(rim.Centre);
        // The long axis lies across the normal as seen; the short one is foreshortened by the normal's turn from the eye.
        var normal = new Vec2(eye.Right.Dot(rim.Normal), eye.Up.Dot(rim.Normal));
        var (halfA, facing) = (rim.Radius * eye.Scale, Math.Abs(eye.Viewer.Dot(rim.Normal)));
        var turn = normal.Length > 1e-12 ? normal.Left.Angle : 0;
        return new(new Vec2(centre.X, centre.Y) - corner, halfA, halfA * facing, turn, Layers.Outline, Stroke.Outline);
    }
}
