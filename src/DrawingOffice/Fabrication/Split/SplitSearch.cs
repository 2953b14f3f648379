using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// Best-first branch and bound. The bound of a partial split is the greedy forest of most saving, which no foldable split can better. When
/// the folds of that forest cannot all be made, a small set that stands in its own way is found and one of it must be welded: those are the
/// branches; bends that only the vice can make because others stand in the way are branched on alike, either welded or paid for. When nothing
/// is left to branch on, all folds are, which lists the next best splits.
/// </summary>
sealed class SplitSearch
{
    /// <summary>Partial splits after which it stops and says so.</summary>
    public const int MostSteps = 20_000;

    /// <summary>Tried for second and third splits once the first is proven.</summary>
    public const int TriedForMore = 16;

    /// <summary>Looked at, tried or not, for the same.</summary>
    public const int StepsForMore = 1000;

    readonly Forest _forest;
    readonly Tried _tried;
    readonly SplitWork _work;
    readonly double _allWelded;
    readonly ImmutableArray<ModelJoint> _onePiece;

    // Past the folder's length or thickness wherever they are: their hammering is in the saving already.
    readonly ImmutableArray<bool> _byHand;
    readonly PriorityQueue<(UInt128 Forced, UInt128 Banned, UInt128 Folds, double Work, bool Paid), (double, int)> _open = new();
    readonly List<(UInt128 Folds, double Work)> _kept = [];
    int _pushed;
    int _looked;

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
        var (looked, steps) = (0, 0);
        while (_open.TryPeek(out var next, out _))
        {
            Bound = next.Work;
            Proven = _kept.Count > 0 && next.Work >= _kept[0].Work - Same;
            if (!Proven) (looked, steps) = (_looked, Steps);
            if (Proven && (_kept.Count >= most && next.Work >= _kept[most - 1].Work - Same || _looked - looked > TriedForMore || Steps - steps > StepsForMore)) break;
            if (stop.IsCancellationRequested || Steps >= MostSteps) return;
            _open.Dequeue();
            // What the forced folds hammer among themselves is paid by every split that holds them; reckoned only now, since most are never looked at.
            if (next.Work + Hammered(next.Forced) is var paid && !next.Paid && paid > next.Work)
            {
                _open.Enqueue(next with { Work = paid, Paid = true }, (paid, _pushed++));
                continue;
            }
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
        // The best forest may serve as it is.
        if (_forest.Best(forced, banned) is { } whole && _forest.Parts(whole.Folds).All(p => _tried.Conflict(p.Folds) == 0)) Offer(whole.Folds, 3);
        if (_kept.Count > 0 && _kept[0].Work <= _allWelded - _forest.Best(forced, banned)!.Value.Saved + Same) return;
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
        _open.Enqueue((forced, banned, best.Folds, work, false), (work, _pushed++));
    }

    UInt128 All => _forest.Model.Joints.Length == 128 ? ~UInt128.Zero : (UInt128.One << _forest.Model.Joints.Length) - 1;

    void Look(UInt128 forced, UInt128 banned, UInt128 folds, double work, int most)
    {
        if (_kept.Count >= most && work >= _kept[most - 1].Work - Same) return;
        var (conflict, strained) = (UInt128.Zero, UInt128.Zero);
        // What would not be kept need not be tried.
        if (!_kept.Any(k => k.Work <= work && !Distinct(k.Folds, folds))) (conflict, strained) = Try(folds, forced, most);
        // One of these must be welded: the first; or the first folded and the second welded; and so on.
        foreach (var j in Forest.List((conflict == 0 ? folds : conflict) & ~forced).OrderBy(j => _forest.Saves[j]))
        {
            Push(forced, banned | Forest.Bit(j));
            forced |= Forest.Bit(j);
        }
        // Or all of it folded, and one hammered.
        if (strained != 0) Push(forced, banned);
    }

    /// <returns>Folds of which one is to be welded, 0 when all can stand; and the same where the other way out is to hammer one.</returns>
    (UInt128 Conflict, UInt128 Strained) Try(UInt128 folds, UInt128 forced, int most)
    {
        _looked++;
        var conflict = UInt128.Zero;
        foreach (var part in _forest.Parts(folds))
            if ((conflict = _tried.Conflict(part.Folds)) != 0) break;
        if (conflict == 0) conflict = Offer(folds, most);
        if (conflict != 0) return (conflict, 0);
        var strained = Strained(folds, forced);
        return (strained, strained);
    }

    double Hammered(UInt128 forced) => _work.ViceFold * _forest.Parts(forced).Sum(p => _tried.Strains(p.Folds, _byHand));

    /// <summary>A few folds that bring about hammering not yet paid for.</summary>
    UInt128 Strained(UInt128 folds, UInt128 forced)
    {
        if (_work.ViceFold <= 0) return 0;
        var paid = Hammered(forced);
        foreach (var part in _forest.Parts(folds))
            foreach (var few in part.Folds == 0 ? [] : _tried.Strained(part.Folds, _byHand))
                if ((few & ~forced) != 0 && Hammered(forced | few) > paid) return few;
        return 0;
    }

    /// <summary>Tries every piece whole and keeps the split when it is good and distinct.</summary>
    /// <returns>What cannot be made after all; 0 when all can.</returns>
    UInt128 Offer(UInt128 folds, int most)
    {
        var work = _allWelded - Forest.List(folds).Sum(j => _forest.Saves[j]);
        foreach (var part in _forest.Parts(folds))
        {
            if (part.Folds == 0) continue;
            if (_tried.Whole(part.Folds).Piece is null) return part.Folds;
            work += _tried.Strains(part.Folds, _byHand) * _work.ViceFold;
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
