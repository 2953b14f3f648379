namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>Which single unknowns to hold so that a set of motions is stopped.</summary>
static class Pins
{
    /// <summary>One unknown for each motion, chosen one after the other where what is left of the motions is largest (row pivoting).</summary>
    public static int[] Choose(double[][] motions)
    {
        var left = motions.Select(m => m.ToArray()).ToArray();
        var pins = new int[motions.Length];
        for (var k = 0; k < pins.Length; k++)
        {
            pins[k] = Largest(left);
            // Turn the motions so that only the first unfinished one moves the held unknown, then leave that one out.
            var along = left.Select(m => m[pins[k]]).ToArray();
            var norm = Math.Sqrt(along.Sum(a => a * a));
            var total = new double[motions[0].Length];
            for (var i = 0; i < left.Length; i++)
                for (var u = 0; u < total.Length; u++) total[u] += along[i] / norm * left[i][u];
            for (var i = 0; i < left.Length; i++)
                for (var u = 0; u < total.Length; u++) left[i][u] -= along[i] / norm * total[u];
        }
        return pins;
    }

    static int Largest(double[][] motions)
    {
        var (best, most) = (0, -1.0);
        for (var u = 0; u < motions[0].Length; u++)
        {
            double square = 0;
            foreach (var m in motions) square += m[u] * m[u];
            if (square > most) (best, most) = (u, square);
        }
        return best;
    }
}

/// <summary>Gram-Schmidt, done twice against rounding.</summary>
static class Orthonormal
{
    /// <summary>The vectors made orthonormal and free of the <paramref name="without"/> ones (orthonormal themselves); those that vanish are dropped.</summary>
    public static double[][] Of(IEnumerable<double[]> vectors, double[][]? without = null)
    {
        var result = new List<double[]>();
        foreach (var vector in vectors)
        {
            var v = vector.ToArray();
            var before = Norm(v);
            for (var pass = 0; pass < 2; pass++)
            {
                foreach (var w in without ?? []) Remove(v, w);
                foreach (var w in result) Remove(v, w);
            }
            var norm = Norm(v);
            // Cause: what is left after taking away nearly all of a vector is rounding.
            if (!(norm > 1e-12 * before)) continue;
            for (var u = 0; u < v.Length; u++) v[u] /= norm;
            result.Add(v);
        }
        return [.. result];
    }

    public static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (var u = 0; u < a.Length; u++) sum += a[u] * b[u];
        return sum;
    }

    static double Norm(double[] v) => Math.Sqrt(Dot(v, v));

    static void Remove(double[] v, double[] direction)
    {
        var along = Dot(v, direction);
        for (var u = 0; u < v.Length; u++) v[u] -= along * direction[u];
    }
}
