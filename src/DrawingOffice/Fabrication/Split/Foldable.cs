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
    public readonly record struct Verdict(FoldedPiece? Piece, string Why)
    {
        /// <summary>Joints of which none can be made after the others; default where something else is wrong.</summary>
        public ImmutableArray<int> Stuck { get; init; }
    }

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
        if (folded.Count == 0) return new(new(name, [.. faces], tree.Value, blank.Value, []), "");
        return Ordered(model, name, faces, folded, tree.Value, blank.Value, shop);
    }

    static Verdict Ordered(FaceModel model, string name, IReadOnlyList<int> faces, IReadOnlyCollection<int> folded, FaceTree tree, Blank blank, SheetShop shop)
    {
        ImmutableArray<int> joints = [.. tree.Bends.Select(b => folded.First(j => Joins(model, j, b)))];
        var order = MakingOrder.Of(model, tree, blank, shop, joints);
        return order.Stuck.IsEmpty ? new(new(name, [.. faces], tree, blank, order.Steps), "") : new(null, order.Why) { Stuck = order.Stuck };
    }

    static bool Joins(FaceModel model, int joint, Bend bend) =>
        (model.Faces[model.Joints[joint].First].Name, model.Faces[model.Joints[joint].Second].Name) is var names && (names == (bend.Parent, bend.Child) || names == (bend.Child, bend.Parent));

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
