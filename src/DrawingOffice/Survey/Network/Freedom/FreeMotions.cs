using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// What the readings leave free, found as the null space of the equations with every row brought to unit length, so that a
/// tape counts as much as a micrometer: whether a feature is held is a question of kind, not of precision.
/// Block inverse iteration on JᵀJ + shift; each Ritz value is then taken from the rows themselves, so that it is a true square.
/// </summary>
static class FreeMotions
{
    /// <summary>Cause: a motion of 1 mm that changes no (unit-length) reading by more than 10 nm cannot be seen with bench tools.</summary>
    const double Unseen = 1e-10;

    /// <summary>Cause: well above the rounding of the factor (1e-16), well below the square of the weakest motion worth calling held.</summary>
    const double Shift = 1e-9;

    /// <summary>Cause: a motion held by 1e-6 (the weakest worth calling held) loses three digits a round against a free one.</summary>
    const int Rounds = 4;

    /// <param name="datum">Orthonormal motions of the whole plan; excluded from the answer.</param>
    public static double[][] Of(SparseRows rows, NormalMatrix normal, ReadOnlySpan<double> weights, double[][] datum)
    {
        var n = normal.Size;
        var unit = UnitWeights(rows, weights);
        var added = new double[n];
        Array.Fill(added, Shift);
        foreach (var u in Pins.Choose(datum)) added[u] += 1;
        normal.Assemble(unit);
        if (!normal.Factor(added)) throw new InvalidOperationException("a shifted normal matrix must be positive definite");

        for (var block = Math.Min(2, n); ; block = Math.Min(2 * block, n))
        {
            var motions = Iterate(normal, rows, unit, datum, block);
            if (motions.Length < block || block == n) return motions;
        }
    }

    static double[][] Iterate(NormalMatrix normal, SparseRows rows, double[] unit, double[][] datum, int block)
    {
        var n = normal.Size;
        var chance = new Chance(20260101);
        var z = new double[block][];
        for (var k = 0; k < block; k++) z[k] = [.. Enumerable.Range(0, n).Select(_ => chance.Normal())];
        for (var round = 0; round < Rounds; round++)
        {
            foreach (var v in z) normal.Solve(v.ToArray(), v);
            z = Orthonormal.Of(z, datum);
        }
        return Ritz(z, rows, unit);
    }

    /// <summary>The combinations of the block whose squared effect on all rows is below <see cref="Unseen"/>.</summary>
    static double[][] Ritz(double[][] z, SparseRows rows, double[] unit)
    {
        var k = z.Length;
        var effect = new double[k, k];
        var seen = new double[k];
        for (var r = 0; r < rows.Rows; r++)
        {
            if (unit[r] == 0) continue;
            for (var i = 0; i < k; i++) seen[i] = rows.Dot(r, z[i]);
            for (var i = 0; i < k; i++)
                for (var j = 0; j < k; j++) effect[i, j] += unit[r] * seen[i] * seen[j];
        }
        var (values, vectors) = SymmetricEigen.Of(effect);
        var free = new List<double[]>();
        for (var e = 0; e < k && values[e] < Unseen; e++)
        {
            var motion = new double[rows.Columns];
            for (var i = 0; i < k; i++)
                for (var u = 0; u < motion.Length; u++) motion[u] += vectors[i, e] * z[i][u];
            free.Add(motion);
        }
        return [.. free];
    }

    static double[] UnitWeights(SparseRows rows, ReadOnlySpan<double> weights)
    {
        var unit = new double[rows.Rows];
        for (var r = 0; r < unit.Length; r++)
        {
            if (weights[r] == 0) continue;
            double square = 0;
            foreach (var v in rows.ValuesOf(r)) square += v * v;
            unit[r] = square > 0 ? 1 / square : 0;
        }
        return unit;
    }
}
