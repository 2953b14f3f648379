using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>
/// A straight or tapered rail as flat faces joined along straight bends, with as many flange faces as its edges have straights: the road on which
/// folder, collisions and order of bends are checked, and by which the outlines are.
/// </summary>
public static class RailTree
{
    /// <returns>Null where the rail is not made of flat faces: curved, creased or turning, lips on a flange of changing width, or runs of a flange that lap on the blank.</returns>
    public static FaceTree? Of(RailForm form)
    {
        if (!form.Planar || form.Folds.Any(f => f.Wedges.Any(w => !w.Open) || f.Shape!.LipTurn != 0 && !Even(f))) return null;
        var (faces, bends) = (new List<Face>(), new List<Bend>());
        ImmutableArray<Vec2> low = Ends(form.Lower), high = Ends(form.Upper);
        faces.Add(new("web", Loop.Of([.. low, .. high.Reverse()]), []));
        foreach (var edge in form.Folds)
            for (var i = 0; i < edge.Line.Steps.Length; i++) Run(edge, i, faces, bends);
        return FaceTree.Create(form.Rail.Title, form.Rail.Thickness, faces, bends) is { Ok: true } tree ? tree.Value : null;
    }

    static bool Even(FoldEdge edge) => edge.Marks.All(m => Math.Abs(edge.FlangeAt(m) - edge.FlangeAt(0)) < 1e-12);

    static ImmutableArray<Vec2> Ends(FoldEdge edge) => [edge.Line.Steps[0].From, .. edge.Line.Steps.Select(s => s.To)];

    static void Run(FoldEdge edge, int step, List<Face> faces, List<Bend> bends)
    {
        var shape = edge.Shape!;
        var (from, to) = (edge.Line.StartOf(step), edge.Line.StartOf(step) + edge.Line.Steps[step].Length);
        // Walked anticlockwise the web's lower side runs with the rail, its upper side against it; the flange's x axis runs against the walk.
        var (name, length) = ($"{edge.Name} flange {step + 1}", to - from);
        var (start, end) = edge.Upper ? (edge.Line.Steps[step].To, edge.Line.Steps[step].From) : (edge.Line.Steps[step].From, edge.Line.Steps[step].To);
        double X(double along) => edge.Upper ? along - from : to - along;
        var tips = edge.Parts.Where(p => p.Step == step).SelectMany(p => new[] { p.From, p.To }).Distinct()
            .Select(a => new Vec2(X(a), shape.Flat(edge.FlangeAt(a)))).OrderByDescending(p => p.X).ToList();
        faces.Add(new(name, Loop.Of([new(0, 0), new(length, 0), .. shape.LipTurn == 0 ? tips : [tips[0], tips[^1]]]), []));
        bends.Add(new("web", start, end, name, shape.Towards * shape.Angle, shape.InsideRadius));
        if (shape.LipTurn == 0) return;
        var lip = $"{edge.Name} lip {step + 1}";
        var lips = edge.Parts.Where(p => p.Step == step).SelectMany(p => new[] { p.From, p.To }).Distinct()
            .Select(a => new Vec2(X(a), shape.LipFlat(edge.LipAt(a)))).OrderByDescending(p => p.X);
        faces.Add(new(lip, Loop.Of([new(0, 0), new(length, 0), .. lips]), []));
        bends.Add(new(name, tips[0], tips[^1], lip, shape.Towards * shape.LipTurn * shape.LipAngle, shape.InsideRadius));
    }
}
