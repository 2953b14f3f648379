using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// An order in which the bends of one piece are made, found backwards from the finished piece: a bend that the folder can make last is taken off,
/// and so on; the fewer bends are made the less stands in the way, so it hardly matters which goes first. Where none can be made in the folder,
/// the shortest that stands in the way and goes into the vice is hammered.
/// </summary>
sealed class MakingOrder(FaceModel model, FaceTree tree, Blank blank, SheetShop shop, ImmutableArray<int> jointOf)
{
    // So few bends are searched with every turning back as well.
    const int SearchedWhole = 6;

    /// <param name="Steps">First to last; empty when stuck.</param>
    /// <param name="Stuck">Joints of which none can be made last.</param>
    /// <param name="Why">What stands in the way.</param>
    public readonly record struct Found(ImmutableArray<MakeStep> Steps, ImmutableArray<int> Stuck, string Why);

    /// <param name="jointOf">For each bend of the tree its joint.</param>
    public static Found Of(FaceModel model, FaceTree tree, Blank blank, SheetShop shop, ImmutableArray<int> jointOf) => new MakingOrder(model, tree, blank, shop, jointOf).Run();

    readonly List<MakeStep> _last = [];

    Found Run()
    {
        var made = new bool[tree.Bends.Length];
        Array.Fill(made, true);
        if (ByHand(made) is { } beyond) return beyond;
        if (shop.Folder is not { } folder) return new([.. _last], [], "");
        var trial = new FolderTrial(tree, blank, folder);
        while (made.Contains(true))
        {
            var hits = new Dictionary<int, string>();
            if (TakeOff(trial, made, hits)) continue;
            var hammered = hits.Keys.Where(i => InVice(jointOf[i])).OrderBy(i => tree.Bends[i].Length).ThenBy(i => i).FirstOrDefault(-1);
            if (hammered < 0) return Stuck(made, hits, folder);
            made[hammered] = false;
            _last.Add(new(jointOf[hammered], null));
        }
        _last.Reverse();
        return new([.. _last], [], "");
    }

    /// <summary>What the folder's limits keep out is hammered last; where the vice cannot either, it is told.</summary>
    Found? ByHand(bool[] made)
    {
        var limits = shop.Folder is { } f ? Check.MachineLimits(tree, f).ToList() : [];
        for (var i = 0; i < made.Length; i++)
        {
            var id = blank.BendLines[i].Id;
            var stopped = shop.Folder is null ? "there is no folder" : limits.FirstOrDefault(c => c.About.IsEmpty || c.About.Contains(id))?.Words.TrimEnd('.');
            if (stopped is null) continue;
            if (!InVice(jointOf[i])) return new([], [jointOf[i]], $"{stopped}, and {BeyondVice(jointOf[i])}");
            made[i] = false;
            _last.Add(new(jointOf[i], null));
        }
        return null;
    }

    /// <summary>One pass over what is made: all that can be made last, one after another; if none, what each would hit.</summary>
    bool TakeOff(FolderTrial trial, bool[] made, Dictionary<int, string> hits)
    {
        var before = _last.Count;
        for (var i = made.Length - 1; i >= 0; i--)
        {
            if (!made[i]) continue;
            made[i] = false;
            var (step, hit) = trial.Make(i, made);
            if (step is not null) _last.Add(new(jointOf[i], step));
            else (made[i], hits[i]) = (true, hit!);
        }
        return _last.Count > before;
    }

    Found Stuck(bool[] made, Dictionary<int, string> hits, Folder folder)
    {
        if (tree.Bends.Length <= SearchedWhole && _last.TrueForAll(s => s.Fold is not null) && BendOrder.Find(tree, blank, folder) is { Possible: true } order)
            return new([.. order.Steps.Select(s => new MakeStep(jointOf[blank.BendLines.ToList().FindIndex(b => b.Id == s.Bend)], s))], [], "");
        var first = hits.First();
        return new([], [.. Enumerable.Range(0, made.Length).Where(i => made[i]).Select(i => jointOf[i])], $"{blank.BendLines[first.Key].Id} would strike the folder: {first.Value}");
    }

    bool InVice(int joint) => model.Joints[joint].Length <= shop.ViceWidth && model.Pressing.Thickness <= shop.ViceThickness;

    string BeyondVice(int joint) => model.Pressing.Thickness > shop.ViceThickness ? $"{model.Pressing.Thickness:0.0#} mm sheet is more than the {shop.ViceThickness:0.0#} mm hammered over"
        : $"{model.Joints[joint].Length:0} mm is more than the vice's {shop.ViceWidth:0} mm";
}
