using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>Whether some faces can be folded out of one blank with the shop's tools, and how; or why not.</summary>
static class Foldable
{
    /// <param name="Piece">Null when it cannot be made.</param>
    /// <param name="Why">Ends "… because": plain words; empty when it can be made.</param>
    public readonly record struct Verdict(FoldedPiece? Piece, string Why);

    /// <param name="folded">Joints, by index; the faces hang together by them.</param>
    public static Verdict Try(FaceModel model, IReadOnlyList<int> faces, IReadOnlyCollection<int> folded, SheetShop shop, BendMethod method)
    {
        var name = string.Join(" + ", faces.Select(f => model.Faces[f].Name));
        var tree = PieceTree.Of(model, faces, folded);
        if (!tree.Ok) return new(null, tree.Refusal!.Sentence);
        var blank = Develop.Blank(tree.Value, method);
        if (!blank.Ok) return new(null, blank.Refusal!.Sentence);
        if (blank.Value.Cautions.Any(c => c.Kind == CautionKind.BlankOverlaps)) return new(null, "the flat blank would run into itself");
        if (!Fits(blank.Value.Outline, shop.SheetLength, shop.SheetWidth)) return new(null, $"the blank would not fit a sheet of {shop.SheetLength:0} × {shop.SheetWidth:0} mm");
        if (folded.Count == 0) return new(new(name, [.. faces], tree.Value, blank.Value, [], []), "");
        return Ordered(model, name, faces, folded, tree.Value, blank.Value, shop, method);
    }

    static Verdict Ordered(FaceModel model, string name, IReadOnlyList<int> faces, IReadOnlyCollection<int> folded, FaceTree tree, Blank blank, SheetShop shop, BendMethod method)
    {
        var hammered = new SortedSet<int>();
        foreach (var j in folded)
            if (shop.Folder is not { } folder || Stopped(tree, folder, Id(model, tree, j)) is { })
                if (!Hammer(model, j, shop, hammered)) return new(null, Beyond(model, j, shop, tree));
        while (true)
        {
            if (shop.Folder is not { } f || hammered.Count == folded.Count) return new(new(name, [.. faces], tree, blank, [], [.. hammered]), "");
            var (now, flat) = (tree, blank);
            if (hammered.Count > 0)
            {
                now = PieceTree.Of(model, faces, folded, hammered).Value;
                if (Develop.Blank(now, method) is not { Ok: true } before) return new(null, "a bend hammered later leaves no blank to fold");
                flat = before.Value;
            }
            var order = BendOrder.Find(now, flat, f);
            var later = hammered.Select(j => Id(model, tree, j)).ToHashSet();
            if (order.Possible) return new(new(name, [.. faces], tree, blank, [.. order.Steps.Where(s => !later.Contains(s.Bend))], [.. hammered]), "");
            // What the folder cannot reach, the shortest first, is left to the vice.
            var blocked = order.Cautions.SelectMany(c => c.About).ToHashSet();
            var next = folded.Where(j => !hammered.Contains(j) && blocked.Contains(Id(model, tree, j))).OrderBy(j => model.Joints[j].Length).ThenBy(j => j).ToList();
            if (next.Count == 0 || !Hammer(model, next[0], shop, hammered)) return new(null, Told(order));
        }
    }

    static string Told(BendOrder order) => order.Cautions.FirstOrDefault() is { } c ? $"it would strike the folder: {c.Words.TrimEnd('.')}" : "no order of folding was found";

    static bool Hammer(FaceModel model, int joint, SheetShop shop, SortedSet<int> hammered)
    {
        if (model.Joints[joint].Length > shop.ViceWidth || model.Pressing.Thickness > shop.ViceThickness) return false;
        hammered.Add(joint);
        return true;
    }

    static string Beyond(FaceModel model, int joint, SheetShop shop, FaceTree tree)
    {
        var why = shop.Folder is { } f ? Stopped(tree, f, Id(model, tree, joint)) : "there is no folder";
        var vice = model.Pressing.Thickness > shop.ViceThickness ? $"{model.Pressing.Thickness:0.0#} mm sheet is more than the {shop.ViceThickness:0.0#} mm hammered over"
            : $"{model.Joints[joint].Length:0} mm is more than the vice's {shop.ViceWidth:0} mm";
        return $"{why?.TrimEnd('.')}, and {vice}";
    }

    /// <summary>What of the machine's limits stops a bend; null when none does.</summary>
    static string? Stopped(FaceTree tree, Folder folder, string bend) =>
        Check.MachineLimits(tree, folder).FirstOrDefault(c => c.About.IsEmpty || c.About.Contains(bend))?.Words;

    static string Id(FaceModel model, FaceTree tree, int joint)
    {
        var (a, b) = (model.Faces[model.Joints[joint].First].Name, model.Faces[model.Joints[joint].Second].Name);
        return tree.Bends.Any(x => x.Parent == a && x.Child == b) ? $"{a}-{b}" : $"{b}-{a}";
    }

    /// <summary>The outline lies within the sheet, along one of its own straight sides or along its frame.</summary>
    internal static bool Fits(Loop outline, double length, double width)
    {
        var points = outline.Flatten(0.1);
        var directions = Enumerable.Range(0, points.Length).Select(i => (points[(i + 1) % points.Length] - points[i]).Unit).Prepend(new(1, 0));
        foreach (var d in directions)
        {
            if (d.Length < 0.5) continue;
            var (u, v) = (Extent(points, d), Extent(points, d.Left));
            if (Math.Max(u, v) <= Math.Max(length, width) && Math.Min(u, v) <= Math.Min(length, width)) return true;
        }
        return false;
    }

    static double Extent(ImmutableArray<Vec2> points, Vec2 along) => points.Max(p => p.Dot(along)) - points.Min(p => p.Dot(along));
}
