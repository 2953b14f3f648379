using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// Remembers what could be folded and what could not. Fewer folds of the same piece are never harder (metal is only taken away), so a set
/// that holds a bad one is bad, and one within a good one is good; what is offered in the end is tried whole all the same.
/// </summary>
sealed class Tried(Forest forest, SheetShop shop, BendMethod method)
{
    readonly Dictionary<UInt128, Foldable.Verdict> _verdicts = [];
    readonly List<UInt128> _bad = [];
    readonly List<UInt128> _good = [];

    public int Blanks => _verdicts.Count;

    /// <summary>Tried whole, against the shop's tools.</summary>
    /// <param name="folds">Hang together; none for the single face <paramref name="face"/>.</param>
    public Foldable.Verdict Whole(UInt128 folds, int face = -1)
    {
        if (folds != 0 && _verdicts.TryGetValue(folds, out var known)) return known;
        var joints = Forest.List(folds);
        ImmutableArray<int> faces = folds == 0 ? [face] : [.. joints.SelectMany(j => new[] { forest.Model.Joints[j].First, forest.Model.Joints[j].Second }).Distinct().Order()];
        var verdict = Foldable.Try(forest.Model, faces, joints, shop, method);
        if (folds == 0) return verdict;
        _verdicts[folds] = verdict;
        if (verdict.Piece is null) _bad.Add(folds);
        else if (verdict.Piece.InVice == 0) _good.Add(folds);
        return verdict;
    }

    /// <summary>A few of the folds that cannot be made together, as few as a walk down finds; 0 when all can.</summary>
    public UInt128 Conflict(UInt128 part)
    {
        if (part == 0 || _good.Any(g => (part & ~g) == 0)) return 0;
        if (_bad.FirstOrDefault(b => (b & ~part) == 0) is var bad && bad != 0) return bad;
        // Most of what stands in the way is between two neighbours, and two are quickly tried.
        foreach (var two in Pairs(part))
            if (Whole(two).Piece is null) return Single(two);
        if (Whole(part).Piece is not null) return 0;
        return Least(Closure(part, Whole(part).Stuck));
    }

    /// <summary>What hangs the stuck joints together, where that is less and cannot be made either.</summary>
    UInt128 Closure(UInt128 part, ImmutableArray<int> stuck)
    {
        if (stuck.IsDefaultOrEmpty) return part;
        var keep = stuck.Aggregate(UInt128.Zero, (s, j) => s | Forest.Bit(j));
        var less = part;
        while (Leaves(less).Where(j => (keep & Forest.Bit(j)) == 0).Aggregate(UInt128.Zero, (s, j) => s | Forest.Bit(j)) is var loose && loose != 0) less &= ~loose;
        return less != part && Whole(less).Piece is null ? less : part;
    }

    /// <summary>Bends of a part hammered because others stand in the way.</summary>
    /// <param name="always">Joints that are hammered anyway.</param>
    public int Strains(UInt128 part, ImmutableArray<bool> always) =>
        part == 0 || _good.Any(g => (part & ~g) == 0) ? 0 : Whole(part).Piece is { } piece ? piece.Steps.Count(s => s.Fold is null && !always[s.Joint]) : 0;

    /// <summary>Two or three folds of a part that hang together and of which one has to be hammered; none where it takes more to bring it about.</summary>
    public IEnumerable<UInt128> Strained(UInt128 part, ImmutableArray<bool> always)
    {
        if (Whole(part).Piece is not { } piece) yield break;
        var joints = Forest.List(part);
        foreach (var step in piece.Steps.Where(s => s.Fold is null && !always[s.Joint]))
        {
            var seen = new HashSet<UInt128>();
            foreach (var a in joints.Where(a => Beside(a, step.Joint)))
            {
                var two = Forest.Bit(step.Joint) | Forest.Bit(a);
                if (Strains(two, always) > 0) yield return two;
                foreach (var b in joints.Where(b => Beside(b, step.Joint) || Beside(b, a)))
                    if ((two & Forest.Bit(b)) == 0 && seen.Add(two | Forest.Bit(b)) && Strains(two | Forest.Bit(b), always) > 0) yield return two | Forest.Bit(b);
            }
        }
    }

    bool Beside(int a, int b)
    {
        var (p, q) = (forest.Model.Joints[a], forest.Model.Joints[b]);
        return a != b && (p.First == q.First || p.First == q.Second || p.Second == q.First || p.Second == q.Second);
    }

    UInt128 Single(UInt128 two)
    {
        foreach (var j in Forest.List(two))
            if (Whole(Forest.Bit(j)).Piece is null) return Forest.Bit(j);
        return two;
    }

    IEnumerable<UInt128> Pairs(UInt128 part)
    {
        var joints = Forest.List(part);
        if (joints.Length == 1) yield return part;
        for (var a = 0; a < joints.Length; a++)
            for (var b = a + 1; b < joints.Length; b++)
                if (Beside(joints[a], joints[b])) yield return Forest.Bit(joints[a]) | Forest.Bit(joints[b]);
    }

    /// <summary>Takes leaves off while what is left still cannot be made.</summary>
    UInt128 Least(UInt128 part)
    {
        while (Leaves(part).Select(j => part & ~Forest.Bit(j)).FirstOrDefault(rest => rest != 0 && Whole(rest).Piece is null) is var less && less != 0) part = less;
        return part;
    }

    IEnumerable<int> Leaves(UInt128 part)
    {
        var joints = Forest.List(part);
        var uses = joints.SelectMany(j => new[] { forest.Model.Joints[j].First, forest.Model.Joints[j].Second }).CountBy(f => f).ToDictionary();
        return joints.Where(j => uses[forest.Model.Joints[j].First] == 1 || uses[forest.Model.Joints[j].Second] == 1);
    }
}
