namespace WitnessMark.PlanningOffice;

/// <summary>Posterior of (mu, a, b) with the scales known: mean and covariance, and the log evidence up to a constant.</summary>
sealed class GaussianFit(double[] mean, double[,] covariance, double logEvidence)
{
    public double LogEvidence => logEvidence;

    public static GaussianFit Of((double Y, int Kind, int System)[] rows, double centre, double muSd, double tauKind, int kinds, double tauSystem, int systems, double sigma)
    {
        // Rank-one updates of the prior by one job after another; the evidence is the product of the one-step predictions.
        var n = 1 + kinds + systems;
        var (m, c, g, log) = (new double[n], new double[n, n], new double[n], 0.0);
        for (var i = 0; i < n; i++) c[i, i] = i == 0 ? muSd * muSd : i <= kinds ? tauKind * tauKind : tauSystem * tauSystem;
        foreach (var (y, k, s) in rows)
        {
            for (var i = 0; i < n; i++) g[i] = c[i, 0] + c[i, k] + c[i, s];
            var v = g[0] + g[k] + g[s] + sigma * sigma;
            var e = y - m[0] - m[k] - m[s];
            log -= (Math.Log(v) + e * e / v) / 2;
            for (var i = 0; i < n; i++)
            {
                m[i] += g[i] * e / v;
                for (var j = 0; j < n; j++) c[i, j] -= g[i] * g[j] / v;
            }
        }
        m[0] += centre;
        return new(m, c, log);
    }

    /// <summary>Mean and variance of mu plus the chosen kind and system; null leaves one out.</summary>
    public (double Mean, double Variance) Sum(int? kind, int? system)
    {
        var (m, v) = (0.0, 0.0);
        foreach (var i in new[] { 0, kind ?? -1, system ?? -1 })
        {
            if (i < 0) continue;
            m += mean[i];
            foreach (var j in new[] { 0, kind ?? -1, system ?? -1 })
                if (j >= 0) v += covariance[i, j];
        }
        return (m, v);
    }
}
