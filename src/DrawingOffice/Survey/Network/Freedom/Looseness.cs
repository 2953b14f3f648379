using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// The null space told in the person's terms: the largest set of features that stay rigid among themselves is the body; every
/// other feature that moves against it is loose, and those that cannot move apart from each other form a group.
/// </summary>
static class Looseness
{
    /// <summary>Cause: free motions are found to about 1e-6 of their length; a hundred times that is surely motion.</summary>
    public const double Still = 1e-4;

    public static ImmutableArray<LooseGroup> Of(Solver solver, Fit fit)
    {
        if (fit.Free.Length == 0) return [];
        var motions = AgainstBody(solver.Layout, fit);
        var groups = ImmutableArray.CreateBuilder<LooseGroup>();
        foreach (var members in Coupled(Enumerable.Range(0, solver.Layout.Features.Length), f => Own(solver.Layout, f), motions)) groups.Add(Describe(solver, fit, motions, members));
        return groups.ToImmutable();
    }

    /// <summary>Ids of the features whose place, turn or size is not fixed.</summary>
    public static ImmutableHashSet<string> LooseIds(IEnumerable<LooseGroup> groups) => [.. groups.SelectMany(g => g.Ids)];

    /// <summary>The free motions as seen from the body, orthonormal.</summary>
    static double[][] AgainstBody(Layout layout, Fit fit)
    {
        var rigid = RigidMotionOfBody(layout, fit);
        var datum = layout.DatumMotions(fit.X, Vec2.Zero);
        var relative = fit.Free.Select((motion, k) =>
        {
            var m = motion.ToArray();
            for (var d = 0; d < 3; d++)
                for (var u = 0; u < m.Length; u++) m[u] -= rigid[k][d] * datum[d][u];
            return m;
        });
        return Orthonormal.Of(relative);
    }

    /// <summary>Shift and turn (in datum units, about the origin) that the body makes in each free motion.</summary>
    static double[][] RigidMotionOfBody(Layout layout, Fit fit)
    {
        var places = Enumerable.Range(0, layout.Features.Length).Where(layout.HasPlace).ToArray();
        var (best, most) = (fit.Free.Select(_ => new double[3]).ToArray(), 0);
        // A body holds at least two features; one pair of it is enough to know its motion. Pairs further along add nothing once a body holds the majority.
        for (var i = 0; i < places.Length && 2 * most <= places.Length; i++)
            for (var j = i + 1; j < places.Length && 2 * most <= places.Length; j++)
            {
                if (PairMotion(layout, fit, places[i], places[j]) is not { } motion) continue;
                var count = places.Count(p => Follows(layout, fit, motion, p));
                if (count > most) (best, most) = (motion, count);
            }
        return best;
    }

    static double[][]? PairMotion(Layout layout, Fit fit, int i, int j)
    {
        var (a, b) = (layout.Place(i, fit.X), layout.Place(j, fit.X));
        var between = b - a;
        if (between.Length < 1e-6 * layout.Lever) return null;
        var result = new double[fit.Free.Length][];
        for (var k = 0; k < result.Length; k++)
        {
            var (va, vb) = (layout.Place(i, fit.Free[k]), layout.Place(j, fit.Free[k]));
            if (Math.Abs((vb - va).Dot(between.Unit)) > Still * Scale(fit.Free[k])) return null;
            var turn = (vb - va).Dot(between.Left) / between.Dot(between);
            var shift = va - turn * a.Left;
            result[k] = [shift.X, shift.Y, turn * layout.Lever];
        }
        return result;
    }

    static bool Follows(Layout layout, Fit fit, double[][] motion, int feature)
    {
        for (var k = 0; k < motion.Length; k++)
        {
            var rigid = new Vec2(motion[k][0], motion[k][1]) + motion[k][2] / layout.Lever * layout.Place(feature, fit.X).Left;
            if ((layout.Place(feature, fit.Free[k]) - rigid).Length > Still * Scale(fit.Free[k])) return false;
        }
        return true;
    }

    public static double Scale(double[] motion) => motion.Max(Math.Abs);

    /// <summary>Features that move, split into sets that do not share a motion: linked where the projector Σ z zᵀ ties them.</summary>
    public static IEnumerable<int[]> Coupled(IEnumerable<int> features, Func<int, IEnumerable<int>> own, double[][] motions)
    {
        var moving = features.Where(f => own(f).Any(u => Reach(motions, u, u) > Still * Still)).ToList();
        while (moving.Count > 0)
        {
            var group = new List<int> { moving[0] };
            moving.RemoveAt(0);
            for (var i = 0; i < group.Count; i++)
                foreach (var f in moving.Where(f => Linked(motions, own(group[i]), own(f))).ToList())
                {
                    group.Add(f);
                    moving.Remove(f);
                }
            yield return [.. group.Order()];
        }
    }

    static bool Linked(double[][] motions, IEnumerable<int> a, IEnumerable<int> b) =>
        a.Any(u => b.Any(v => Math.Abs(Reach(motions, u, v)) > Still * Still));

    static double Reach(double[][] motions, int u, int v) => motions.Sum(z => z[u] * z[v]);

    static IEnumerable<int> Own(Layout layout, int feature) => Enumerable.Range(layout.First(feature), layout.Unknowns(feature));

    static LooseGroup Describe(Solver solver, Fit fit, double[][] motions, int[] members)
    {
        var layout = solver.Layout;
        var parts = Parts(motions, [.. members.SelectMany(f => Own(layout, f))]);
        var arrows = parts.Select(part => Arrows(layout, part, members)).ToImmutableArray();
        ImmutableArray<string> ids = [.. members.Select(f => layout.Features[f].Id)];
        return new LooseGroup(ids, parts.Length, LooseWords.Of(solver, fit, parts, members), parts.Length, arrows);
    }

    /// <summary>
    /// The motions of one group alone, orthonormal. Groups share no motion, so the products of the motions cut down to one group
    /// make a projector: its eigenvalues are 1 for what moves the group and 0 for the rest, and a half parts them surely.
    /// </summary>
    public static double[][] Parts(double[][] motions, int[] own)
    {
        var k = motions.Length;
        var products = new double[k, k];
        for (var i = 0; i < k; i++)
            for (var j = 0; j < k; j++) products[i, j] = own.Sum(u => motions[i][u] * motions[j][u]);
        var (values, vectors) = SymmetricEigen.Of(products);
        return [.. Enumerable.Range(0, k).Where(e => values[e] > 0.5).Select(e =>
        {
            var part = new double[motions[0].Length];
            foreach (var u in own)
                for (var i = 0; i < k; i++) part[u] += vectors[i, e] * motions[i][u];
            return part;
        })];
    }

    static ImmutableArray<Arrow> Arrows(Layout layout, double[] motion, int[] members)
    {
        var arrows = members.Select(f =>
        {
            var move = layout.HasPlace(f) ? layout.Place(f, motion) : Vec2.Zero;
            var size = layout.SizeOf(f);
            return new Arrow(layout.Features[f].Id, move, size < 0 ? 0 : motion[size]);
        }).ToArray();
        var longest = arrows.Max(a => Math.Max(a.Move.Length, Math.Abs(a.Grow)));
        return longest == 0 ? [.. arrows] : [.. arrows.Select(a => new Arrow(a.Id, a.Move / longest, a.Grow / longest))];
    }
}
