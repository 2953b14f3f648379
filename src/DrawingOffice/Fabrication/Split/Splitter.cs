using System.Globalization;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// Splits a pressing into pieces that the shop can fold and that are welded together with the least work: length of weld by how awkward it is,
/// seams to set, folds, pieces. Exact when it is let run to its end; at any time the best so far.
/// </summary>
public static class Splitter
{
    /// <summary>Splits given at most.</summary>
    public const int Most = 3;

    /// <param name="method">How long the sheet in a bend is.</param>
    /// <param name="stop">Ends the search with the best so far.</param>
    /// <returns>One to three splits, least work first; or why there is none.</returns>
    public static Parsed<SplitAnswer> Find(FaceModel model, SheetShop shop, SplitWork work, BendMethod method, IProgress<SplitProgress>? progress = null, CancellationToken stop = default)
    {
        if (model.Joints.Length > Forest.MostJoints) return Refusal.Of("joints", $"{model.Joints.Length}", $"at most {Forest.MostJoints}");
        if (Wrong(shop, work) is { } wrong) return wrong;
        var search = new SplitSearch(model, shop, work, method);
        for (var f = 0; f < model.Faces.Length; f++)
            if (search.Tried.Whole(0, f) is { Piece: null } alone) return Refusal.Of($"face {model.Faces[f].Name}", "by itself", $"{alone.Why.TrimEnd('.')}; part it along a line or give a larger sheet");
        if (search.Forest.Best(Folds(model), ~UInt128.Zero) is null) return Refusal.Of("joints", "fold only", "the joints marked so close a ring of faces; at least one of them must be welded");
        search.Run(Most, progress, stop);
        if (search.Kept.Count == 0) return None(search, model);
        return new SplitAnswer([.. search.Kept.Select((k, i) => Choice(search, k.Folds, k.Work))], search.Proven, search.Bound, search.Steps, search.Tried.Blanks);
    }

    static UInt128 Folds(FaceModel model) => model.Joints.Where(j => j.Wish == JointWish.FoldOnly).Aggregate(UInt128.Zero, (s, j) => s | Forest.Bit(j.Index));

    static Refusal? Wrong(SheetShop shop, SplitWork work)
    {
        if (!(shop.SheetLength > 0 && shop.SheetWidth > 0)) return Refusal.Of("sheet", $"{shop.SheetLength} × {shop.SheetWidth}", "give both sides in mm, more than 0");
        if (!(shop.ViceWidth >= 0 && shop.ViceThickness >= 0)) return Refusal.Of("vice", $"{shop.ViceWidth}, {shop.ViceThickness}", "give width and thickness in mm, 0 or more");
        double[] minutes = [work.PerWeld, work.Seam, work.Fold, work.ViceFold, work.Piece];
        return minutes.All(m => m >= 0 && double.IsFinite(m)) ? null : Refusal.Of("work", string.Join(", ", minutes), "give minutes, 0 or more");
    }

    static Refusal None(SplitSearch search, FaceModel model)
    {
        foreach (var part in search.Forest.Parts(Folds(model)))
            if (part.Folds != 0 && search.Tried.Whole(part.Folds) is { Piece: null } bad) return Refusal.Of("joints", "fold only", bad.Why.TrimEnd('.'));
        return Refusal.Of("joints", "one piece", "no split that the shop can fold keeps those faces together, or the search was stopped before it found one; free a joint");
    }

    static SplitChoice Choice(SplitSearch search, UInt128 folds, double work)
    {
        var model = search.Forest.Model;
        var pieces = search.Forest.Parts(folds).Select(p => search.Tried.Whole(p.Folds, p.Faces[0]).Piece!).OrderByDescending(p => p.Faces.Length).ThenBy(p => p.Faces[0]);
        var welded = model.Joints.Where(j => (folds & Forest.Bit(j.Index)) == 0).ToList();
        return new(Forest.List(folds), [.. pieces.Select((p, i) => p with { Name = $"piece {i + 1} {p.Tree.Faces[0].Id}" })], work, welded.Sum(j => j.Length), [.. welded.Select(j => Reason(search, folds, j))]);
    }

    static string Reason(SplitSearch search, UInt128 folds, ModelJoint j)
    {
        var who = $"{j.Name} ({j.Length.ToString("0", CultureInfo.InvariantCulture)} mm) is welded";
        if (j.Wish == JointWish.WeldOnly) return $"{who} because it is marked so.";
        var groups = search.Forest.Grouped(folds);
        if (groups.Of(j.First) == groups.Of(j.Second)) return $"{who} because its faces already hang together by folds; a ring cannot lie flat.";
        var more = folds | Forest.Bit(j.Index);
        var part = search.Forest.Parts(more).Single(p => (p.Folds & Forest.Bit(j.Index)) != 0).Folds;
        if (search.Forest.Saves[j.Index] <= 0) return $"{who} because folding it would be more work.";
        var conflict = search.Tried.Conflict(part);
        if (conflict == 0) return $"{who} because folding it there would be more work.";
        var why = search.Tried.Whole(conflict) is { Piece: null } bad ? bad.Why.TrimEnd('.') : "the whole cannot be folded together";
        return UInt128.PopCount(conflict) == 1 && (conflict & Forest.Bit(j.Index)) != 0 ? $"{who} because {why}." : $"{who} because together with {Others(search, conflict, j)} {why}.";
    }

    static string Others(SplitSearch search, UInt128 conflict, ModelJoint j) =>
        string.Join(", ", Forest.List(conflict & ~Forest.Bit(j.Index)).Select(i => search.Forest.Model.Joints[i].Name));
}
