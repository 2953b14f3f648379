using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>
/// The null space told in the person's terms, as on a flat part: the largest set of features that move as one is the body; what moves
/// against it is loose, and what cannot move apart forms a group. A face or line shows but some of the six motions of a body; the
/// motion is therefore fitted to the unknowns of a few features and tried on the rest.
/// </summary>
static class SolidLooseness
{
    /// <summary>Sets of features from which a body is sought; a body of any size is hit early.</summary>
    const int MostSeeds = 600;

    public static ImmutableArray<SolidLooseGroup> Of(SolidSolver solver, Fit fit)
    {
        if (fit.Free.Length == 0) return [];
        var layout = solver.Layout;
        var motions = AgainstBody(solver, fit);
        var blocks = Enumerable.Range(0, layout.Features.Length + layout.Frames.Length).Where(f => Own(layout, f).Any());
        return [.. Looseness.Coupled(blocks, f => Own(layout, f), motions).Select(members => Describe(solver, fit, motions, members))];
    }

    /// <summary>The unknowns of a feature, or of a frame (numbered after the features).</summary>
    static IEnumerable<int> Own(SolidLayout layout, int block) => block < layout.Features.Length
        ? Enumerable.Range(layout.First(block), layout.Unknowns(block))
        : Enumerable.Range(layout.FirstOfFrames + 5 * (block - layout.Features.Length), 5);

    static double[][] AgainstBody(SolidSolver solver, Fit fit)
    {
        var datum = solver.Layout.DatumMotions(fit.X, solver.Centre(fit.X));
        var body = Body(solver.Layout, fit, datum);
        return Orthonormal.Of(fit.Free.Select((motion, k) =>
        {
            var m = motion.ToArray();
            for (var d = 0; d < 6; d++)
                for (var u = 0; u < m.Length; u++) m[u] -= body[k][d] * datum[d][u];
            return m;
        }));
    }

    /// <summary>The six rates of the body in each free motion.</summary>
    static double[][] Body(SolidLayout layout, Fit fit, double[][] datum)
    {
        var features = Enumerable.Range(0, layout.Features.Length).Where(f => layout.Unknowns(f) > 0 && layout.Kind(f) != SolidKind.SetUp).ToArray();
        var (best, most) = (fit.Free.Select(_ => new double[6]).ToArray(), 0);
        foreach (var seed in Seeds(features))
        {
            if (2 * most > features.Length) break;
            int[] own = [.. seed.SelectMany(f => Own(layout, f))];
            var motion = fit.Free.Select(z => Fitted(datum, z, own)).ToArray();
            if (!seed.All(f => Follows(layout, fit, datum, motion, f))) continue;
            var count = features.Count(f => Follows(layout, fit, datum, motion, f));
            if (count > most) (best, most) = (motion, count);
        }
        return best;
    }

    static IEnumerable<int[]> Seeds(int[] features)
    {
        var n = features.Length;
        if (n < 3) return [features];
        var triples = from gap in Enumerable.Range(1, Math.Max(1, n / 2))
                      from i in Enumerable.Range(0, n)
                      select (int[])[features[i], features[(i + gap) % n], features[(i + 2 * gap + 1) % n]];
        return triples.Where(t => t.Distinct().Count() == 3).Take(MostSeeds);
    }

    /// <summary>The motion of a rigid body that comes nearest to z on some unknowns: least squares by orthonormal columns.</summary>
    static double[] Fitted(double[][] datum, double[] z, int[] own)
    {
        var (normal, right) = (new double[6, 6], new double[6]);
        for (var i = 0; i < 6; i++)
        {
            right[i] = own.Sum(u => datum[i][u] * z[u]);
            for (var k = 0; k < 6; k++) normal[i, k] = own.Sum(u => datum[i][u] * datum[k][u]);
        }
        var (values, vectors) = Maths.LeastSquares.SymmetricEigen.Of(normal);
        var rates = new double[6];
        for (var e = 0; e < 6; e++)
        {
            // What the seed does not show is left at rest.
            if (values[e] < 1e-8 * values[5]) continue;
            double along = 0;
            for (var i = 0; i < 6; i++) along += vectors[i, e] * right[i];
            for (var i = 0; i < 6; i++) rates[i] += vectors[i, e] * along / values[e];
        }
        return rates;
    }

    static bool Follows(SolidLayout layout, Fit fit, double[][] datum, double[][] motion, int feature)
    {
        for (var k = 0; k < motion.Length; k++)
        {
            var still = Looseness.Still * Looseness.Scale(fit.Free[k]);
            foreach (var u in Own(layout, feature))
            {
                var left = fit.Free[k][u];
                for (var d = 0; d < 6; d++) left -= motion[k][d] * datum[d][u];
                // A diameter may grow on a feature that stands still.
                if (u != layout.SizeOf(feature) && Math.Abs(left) > still) return false;
            }
        }
        return true;
    }

    static SolidLooseGroup Describe(SolidSolver solver, Fit fit, double[][] motions, int[] members)
    {
        var layout = solver.Layout;
        var parts = Looseness.Parts(motions, [.. members.SelectMany(f => Own(layout, f))]);
        int[] features = [.. members.Where(f => f < layout.Features.Length)];
        ImmutableArray<string> ids = [.. features.Select(f => layout.Features[f].Id)];
        return new SolidLooseGroup(ids, parts.Length, SolidLooseWords.Of(solver, fit, parts, members), parts.Length, [.. parts.Select(p => Arrows(layout, fit.X, p, features))]);
    }

    static ImmutableArray<SolidArrow> Arrows(SolidLayout layout, double[] x, double[] motion, int[] features)
    {
        var arrows = features.Select(f =>
        {
            var move = layout.IsPlane(f) ? layout.Direction(f, x) * layout.Offset(f, motion) : layout.IsCornered(f) ? Vec3.Zero : layout.Place(f, motion);
            var turn = layout.DirectionAt(f) is >= 0 and var at ? SolidLayout.Read(at, motion) : Vec3.Zero;
            return new SolidArrow(layout.Features[f].Id, move, turn, layout.SizeOf(f) is >= 0 and var size ? motion[size] : 0);
        }).ToArray();
        var longest = arrows.Select(a => Math.Max(Math.Max(a.Move.Length, a.Turn.Length), Math.Abs(a.Grow))).DefaultIfEmpty(0).Max();
        return longest == 0 ? [.. arrows] : [.. arrows.Select(a => new SolidArrow(a.Id, a.Move / longest, a.Turn / longest, a.Grow / longest))];
    }
}
