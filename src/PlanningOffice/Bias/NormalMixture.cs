using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>A normal distribution whose mean and spread are themselves uncertain: some normals, each with its weight.</summary>
public sealed class NormalMixture
{
    readonly (double Cumulative, double Weight, double Mean, double Sd)[] _parts;

    /// <param name="parts">At least one; weights and standard deviations above 0. The weights are scaled to sum to 1.</param>
    public NormalMixture(IReadOnlyCollection<(double Weight, double Mean, double Sd)> parts)
    {
        var (total, sum) = (parts.Sum(p => p.Weight), 0.0);
        _parts = [.. parts.Select(p => (sum += p.Weight / total, p.Weight / total, p.Mean, p.Sd))];
        Mean = _parts.Sum(p => p.Weight * p.Mean);
        Sd = Math.Sqrt(_parts.Sum(p => p.Weight * (p.Sd * p.Sd + (p.Mean - Mean) * (p.Mean - Mean))));
    }

    public double Mean { get; }

    public double Sd { get; }

    /// <summary>P(X ≤ x); error below 1e-7.</summary>
    public double Below(double x)
    {
        var sum = 0.0;
        foreach (var (_, w, m, sd) in _parts) sum += w * Phi((x - m) / sd);
        return sum;
    }

    /// <summary>x with P(X ≤ x) = p, for p from 0.001 to 0.999; by bisection to 1e-7 of the spread.</summary>
    public double Quantile(double p)
    {
        if (!(p is >= 0.001 and <= 0.999)) throw new ArgumentOutOfRangeException(nameof(p), p, "0.001 to 0.999");
        // By Cantelli's inequality no quantile lies further than sd √(1/p − 1) from the mean.
        var (low, high) = (Mean - 32 * Sd, Mean + 32 * Sd);
        while (high - low > 1e-7 * Sd)
        {
            var middle = (low + high) / 2;
            if (Below(middle) < p) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }

    /// <summary>Two numbers of chance each.</summary>
    public double Draw(Chance chance)
    {
        var (u, z) = (chance.Uniform(), chance.Normal());
        var (low, high) = (0, _parts.Length - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_parts[middle].Cumulative > u) high = middle;
            else low = middle + 1;
        }
        return _parts[low].Mean + z * _parts[low].Sd;
    }

    // Abramowitz and Stegun 26.2.17, error below 7.5e-8: a table of factors asks for it some million times.
    static double Phi(double z)
    {
        var t = 1 / (1 + 0.2316419 * Math.Abs(z));
        var tail = Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI)
            * t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        return z > 0 ? 1 - tail : tail;
    }
}
