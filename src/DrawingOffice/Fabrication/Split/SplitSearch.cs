using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// Best-first branch and bound. The bound of a partial split is the greedy forest of most saving, which no foldable split can better. When
/// the folds of that forest cannot all be made, a small set that stands in its own way is found and one of it must be welded: those are the
/// branches. When they can, the same branching over all of them lists the next best splits.
/// </summary>
sealed class SplitSearch
{
    /// <summary>Partial splits after which it stops and says so.</summary>
    public const int MostSteps = 20_000;

    /// <summary>Looked at for second and third splits once the first is proven.</summary>
    public const int StepsForMore = 100;

    readonly Forest _forest;
    readonly Tried _tried;
    readonly SplitWork _work;
    readonly double _allWelded;
    readonly ImmutableArray<ModelJoint> _onePiece;

    // Past the folder's length or thickness wherever they are: their hammering is in the saving already.
    readonly ImmutableArray<bool> _byHand;
    readonly PriorityQueue<(UInt128 Forced, UInt128 Banned, UInt128 Folds, double Work), (double, int)> _open = new();
    readonly List<(UInt128 Folds, double Work)> _kept = [];
    int _pushed;

    public SplitSearch(FaceModel model, SheetShop shop, SplitWork work, BendMethod method)
    {
        _byHand = [.. model.Joints.Select(j => shop.Folder is not { } f || j.Length > f.Length || model.Pressing.Thickness > f.MaxThickness)];
        var saves = model.Joints.Select(j => Welding(model, j, work) - work.Fold - (_byHand[j.Index] ? work.ViceFold : 0) + work.Piece).ToImmutableArray();
        (_forest, _work) = (new(model, saves), work);
        _tried = new(_forest, shop, method);
        _allWelded = model.Joints.Sum(j => Welding(model, j, work)) + model.Faces.Length * work.Piece;
        _onePiece = [.. model.Joints.Where(j => j.Wish == JointWish.OnePiece)];
    }

    public static double Welding(FaceModel model, ModelJoint j, SplitWork work) =>
        j.Length * work.PerWeld * WeldRules.Awkwardness(j, model.Pressing.Thickness) + work.Seam;

    public Forest Forest => _forest;

    public Tried Tried => _tried;

    public IReadOnlyList<(UInt128 Folds, double Work)> Kept => _kept;

    public bool Proven { get; private set; }

    public double Bound { get; private set; }

    public int Steps { get; private set; }

    public void Run(int most, IProgress<SplitProgress>? progress, CancellationToken stop)
    {
        var (forced, banned) = Wished();
        Greedy(forced, banned, stop);
        Push(forced, banned);
        var more = 0;
        while (_open.TryPeek(out var next, out _))
        {
            Bound = next.Work;
            Proven = _kept.Count > 0 && next.Work >= _kept[0].Work - Same;
            if (Proven && (_kept.Count >= most && next.Work >= _kept[most - 1].Work - Same || more++ > StepsForMore)) break;
            if (stop.IsCancellationRequested || Steps >= MostSteps) return;
            _open.Dequeue();
            Steps++;
            if (Steps % 16 == 1) progress?.Report(new(Steps, _kept.Count > 0 ? _kept[0].Work : double.PositiveInfinity, Bound));
            Look(next.Forced, next.Banned, next.Folds, next.Work, most);
        }
        // Nothing left open: what is kept is all there is.
        if (_open.Count == 0) Proven = true;
        if (_kept.Count > 0 && Proven) Bound = _kept[0].Work;
    }

    const double Same = 1e-9;

    (UInt128 Forced, UInt128 Banned) Wished()
    {
        var (forced, banned) = (UInt128.Zero, UInt128.Zero);
        foreach (var j in _forest.Model.Joints)
            if (j.Wish == JointWish.FoldOnly) forced |= Forest.Bit(j.Index);
            else if (j.Wish == JointWish.WeldOnly) banned |= Forest.Bit(j.Index);
        return (forced, banned);
    }

    /// <summary>A first split to fall back on: folds added by their saving as long as the piece can be made.</summary>
    void Greedy(UInt128 forced, UInt128 banned, CancellationToken stop)
    {
        var folds = forced;
        foreach (var j in _forest.Model.Joints.OrderByDescending(j => _forest.Saves[j.Index]))
        {
            if (stop.IsCancellationRequested) break;
            var more = folds | Forest.Bit(j.Index);
            if ((banned & Forest.Bit(j.Index)) != 0 || more == folds || _forest.Saves[j.Index] <= 0 || _forest.Best(more, ~UInt128.Zero) is null) continue;
            var part = _forest.Parts(more).Single(p => (p.Folds & Forest.Bit(j.Index)) != 0).Folds;
            if (_tried.Conflict(part) == 0) folds = more;
        }
        Offer(folds, 3);
    }

    void Push(UInt128 forced, UInt128 banned)
    {
        if (_forest.Best(forced, banned) is not { } best) return;
        if (_onePiece.Length > 0)
        {
            var may = _forest.Grouped(Forest.List(~banned & All).Aggregate(UInt128.Zero, (s, j) => s | Forest.Bit(j)));
            if (_onePiece.Any(j => may.Of(j.First) != may.Of(j.Second))) return;
        }
        var work = _allWelded - best.Saved;
        _open.Enqueue((forced, banned, best.Folds, work), (work, _pushed++));
    }

    UInt128 All => _forest.Model.Joints.Length == 128 ? ~UInt128.Zero : (UInt128.One << _forest.Model.Joints.Length) - 1;

    void Look(UInt128 forced, UInt128 banned, UInt128 folds, double work, int most)
    {
        if (_kept.Count >= most && work >= _kept[most - 1].Work - Same) return;
        var conflict = UInt128.Zero;
        foreach (var part in _forest.Parts(folds))
            if ((conflict = _tried.Conflict(part.Folds)) != 0) break;
        if (conflict == 0) conflict = Offer(folds, most);
        // One of these must be welded: the first; or the first folded and the second welded; and so on.
        foreach (var j in Forest.List((conflict == 0 ? folds : conflict) & ~forced).OrderBy(j => _forest.Saves[j]))
        {
            Push(forced, banned | Forest.Bit(j));
            forced |= Forest.Bit(j);
        }
    }

    /// <summary>Tries every piece whole and keeps the split when it is good and distinct.</summary>
    /// <returns>What cannot be made after all; 0 when all can.</returns>
    UInt128 Offer(UInt128 folds, int most)
    {
        var work = _allWelded - Forest.List(folds).Sum(j => _forest.Saves[j]);
        foreach (var part in _forest.Parts(folds))
        {
            if (part.Folds == 0) continue;
            if (_tried.Whole(part.Folds).Piece is not { } piece) return part.Folds;
            work += (piece.InVice - piece.Steps.Count(s => _byHand[s.Joint])) * _work.ViceFold;
        }
        var groups = _forest.Grouped(folds);
        if (_onePiece.All(j => groups.Of(j.First) == groups.Of(j.Second))) Keep(folds, work, most);
        return 0;
    }

    void Keep(UInt128 folds, double work, int most)
    {
        if (_kept.Any(k => k.Work <= work && !Distinct(k.Folds, folds))) return;
        _kept.RemoveAll(k => k.Work > work && !Distinct(k.Folds, folds));
        _kept.Add((folds, work));
        _kept.Sort((a, b) => a.Work.CompareTo(b.Work));
        if (_kept.Count > most) _kept.RemoveRange(most, _kept.Count - most);
    }

    /// <summary>Another number of pieces, or more than one fold changed for another.</summary>
    static bool Distinct(UInt128 a, UInt128 b) =>
        UInt128.PopCount(a) != UInt128.PopCount(b) || UInt128.PopCount(a ^ b) > 2;
}
