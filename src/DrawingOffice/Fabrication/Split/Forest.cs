using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>Sets of joints as bits, and the forest of folds that saves most work.</summary>
/// <param name="Saves">Of each joint, minutes saved by folding it instead of welding it.</param>
sealed record Forest(FaceModel Model, ImmutableArray<double> Saves)
{
    public const int MostJoints = 128;

    readonly int[] _order = [.. Enumerable.Range(0, Saves.Length).OrderByDescending(j => Saves[j]).ThenBy(j => j)];

    public static UInt128 Bit(int joint) => UInt128.One << joint;

    public static ImmutableArray<int> List(UInt128 set)
    {
        var list = ImmutableArray.CreateBuilder<int>();
        for (; set != 0; set &= set - 1) list.Add((int)UInt128.TrailingZeroCount(set));
        return list.ToImmutable();
    }

    /// <summary>
    /// The forest of most saving that holds all of <paramref name="forced"/> and none of <paramref name="banned"/>: the greedy one (Kruskal),
    /// best of all forests since forests are a matroid.
    /// </summary>
    /// <returns>Null when the forced folds close a ring.</returns>
    public (UInt128 Folds, double Saved)? Best(UInt128 forced, UInt128 banned)
    {
        var groups = new Groups(Model.Faces.Length);
        var saved = 0.0;
        foreach (var j in List(forced))
        {
            if (!groups.Join(Model.Joints[j].First, Model.Joints[j].Second)) return null;
            saved += Saves[j];
        }
        var folds = forced;
        foreach (var j in _order)
        {
            if (Saves[j] <= 0) break;
            if ((banned & Bit(j)) != 0 || (folds & Bit(j)) != 0 || !groups.Join(Model.Joints[j].First, Model.Joints[j].Second)) continue;
            folds |= Bit(j);
            saved += Saves[j];
        }
        return (folds, saved);
    }

    /// <summary>The faces that hang together by some folds, each group with its folds; single faces too.</summary>
    public ImmutableArray<(ImmutableArray<int> Faces, UInt128 Folds)> Parts(UInt128 folds)
    {
        var groups = Grouped(folds);
        return [.. Enumerable.Range(0, Model.Faces.Length).GroupBy(groups.Of).Select(g => (g.ToImmutableArray(), List(folds).Where(j => groups.Of(Model.Joints[j].First) == g.Key).Aggregate(UInt128.Zero, (s, j) => s | Bit(j))))];
    }

    public Groups Grouped(UInt128 folds)
    {
        var groups = new Groups(Model.Faces.Length);
        foreach (var j in List(folds)) groups.Join(Model.Joints[j].First, Model.Joints[j].Second);
        return groups;
    }

    /// <summary>Which faces are together.</summary>
    public sealed class Groups(int faces)
    {
        readonly int[] _of = [.. Enumerable.Range(0, faces)];

        public int Of(int face)
        {
            while (_of[face] != face) face = _of[face] = _of[_of[face]];
            return face;
        }

        /// <returns>False when they were together before.</returns>
        public bool Join(int a, int b)
        {
            var (x, y) = (Of(a), Of(b));
            _of[x] = y;
            return x != y;
        }
    }
}
