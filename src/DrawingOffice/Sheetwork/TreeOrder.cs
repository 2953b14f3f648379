using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>Puts faces and bends in the order of the tree: bend i brings face i + 1, a parent before its children.</summary>
static class TreeOrder
{
    public static Parsed<(ImmutableArray<Face> Faces, ImmutableArray<Bend> Bends, ImmutableArray<int> Parents)> Of(
        IReadOnlyList<Face> faces, IReadOnlyList<Bend> bends)
    {
        var byId = faces.ToDictionary(f => f.Id);
        if (Named(byId, bends) is { } refusal) return refusal;
        var childrenOf = bends.ToLookup(b => b.Parent);
        var (sorted, used, parents) = (new List<Face> { faces[0] }, new List<Bend>(), new List<int>());
        // Breadth first; each face hangs by one bend, so the walk ends.
        for (var i = 0; i < sorted.Count; i++)
        {
            foreach (var bend in childrenOf[sorted[i].Id])
            {
                sorted.Add(byId[bend.Child]);
                used.Add(bend);
                parents.Add(i);
            }
        }
        if (sorted.Count == faces.Count) return ([.. sorted], [.. used], [.. parents]);
        var loose = faces.First(f => !sorted.Contains(f));
        return Refusal.Of("bends", loose.Id, $"join this face by bends to the first face, \"{faces[0].Id}\"");
    }

    static Refusal? Named(Dictionary<string, Face> byId, IReadOnlyList<Bend> bends)
    {
        var root = byId.First().Key;
        var folded = new HashSet<string>();
        foreach (var bend in bends)
        {
            if (!byId.ContainsKey(bend.Parent)) return Refusal.Of("bend, parent", bend.Parent, "name one of the faces");
            if (!byId.ContainsKey(bend.Child)) return Refusal.Of("bend, child", bend.Child, "name one of the faces");
            if (bend.Child == root) return Refusal.Of("bend, child", bend.Child, "the first face is the root and hangs on nothing; swap parent and child");
            if (!folded.Add(bend.Child)) return Refusal.Of("bend, child", bend.Child, "a face hangs by one bend only; a closed box needs a seam");
        }
        return null;
    }
}
