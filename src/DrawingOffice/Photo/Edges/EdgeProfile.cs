using WitnessMark.DrawingOffice.Photo.Seeing;
using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Photo.Edges;

/// <summary>An edge met along a short line across it.</summary>
/// <param name="Offset">From the line's middle along its direction, px.</param>
/// <param name="Before">Light on the side the line comes from.</param>
/// <param name="After">Light on the side it goes to.</param>
/// <param name="Blur">Standard deviation of the blur, px.</param>
/// <param name="Std">Of the offset, by the scatter of the light about the fitted step, px.</param>
readonly record struct EdgeMet(double Offset, double Before, double After, double Blur, double Std)
{
    public double Step => After - Before;
}

/// <summary>
/// A blurred step, light = before + (after − before) Φ((s − offset)/blur), fitted to the light along a line by Gauss-Newton with damping.
/// </summary>
static class EdgeProfile
{
    /// <summary>px between samples.</summary>
    const double Spacing = 0.75;

    /// <summary>px. Cause: a pixel's own width blurs as much, 1/√12, and somewhat less keeps the fit moving.</summary>
    const double LeastBlur = 0.3;

    const int MostSamples = 64;

    /// <summary>Null where the line (half length <paramref name="reach"/> px about <paramref name="middle"/>) crosses no edge that stands out.</summary>
    /// <param name="least">The least step of light that counts.</param>
    public static EdgeMet? Fit(Light light, Vec2 middle, Vec2 direction, double reach, double least)
    {
        var n = Math.Min(MostSamples, 2 * (int)(reach / Spacing) + 1);
        if (n < 7) return null;
        Span<double> s = stackalloc double[n], v = stackalloc double[n];
        for (var k = 0; k < n; k++)
        {
            s[k] = (k - (n - 1) / 2.0) * Spacing;
            v[k] = light.At(middle.X + s[k] * direction.X, middle.Y + s[k] * direction.Y);
        }
        if (Start(s, v, least) is not { } p) return null;
        var (sum, damping) = (Sum(s, v, p), 1e-3);
        Span<double> normal = stackalloc double[16], right = stackalloc double[4], work = stackalloc double[16], step = stackalloc double[4];
        for (var round = 0; round < 25; round++)
        {
            Normals(s, v, p, normal, right);
            normal.CopyTo(work);
            for (var k = 0; k < 4; k++) work[5 * k] = work[5 * k] * (1 + damping) + 1e-14;
            right.CopyTo(step);
            if (!Cholesky.Solve(work, step)) return null;
            var trial = new Shape(p.Before + step[0], p.After + step[1], p.Offset + Math.Clamp(step[2], -1, 1), Math.Clamp(p.Blur + step[3], LeastBlur, reach));
            var trialSum = Sum(s, v, trial);
            if (trialSum < sum)
            {
                var settled = Math.Abs(trial.Offset - p.Offset) < 1e-4 && sum - trialSum < 1e-6 * sum;
                (p, sum, damping) = (trial, trialSum, damping * 0.2);
                if (settled) break;
            }
            else if ((damping *= 10) > 1e6) break;
        }
        if (Math.Abs(p.After - p.Before) < least || Math.Abs(p.Offset) > reach - 1) return null;
        Normals(s, v, p, normal, right);
        for (var k = 0; k < 4; k++) normal[5 * k] += 1e-14;
        step.Clear();
        step[2] = 1;
        if (!Cholesky.Solve(normal, step)) return null;
        return new EdgeMet(p.Offset, p.Before, p.After, p.Blur, Math.Sqrt(Math.Max(0, step[2]) * sum / (n - 4)));
    }

    readonly record struct Shape(double Before, double After, double Offset, double Blur);

    /// <summary>The steepest place, with the light some way off on either side of it.</summary>
    static Shape? Start(ReadOnlySpan<double> s, ReadOnlySpan<double> v, double least)
    {
        var (n, at, steepest) = (s.Length, -1, 0.0);
        for (var k = 1; k + 1 < n; k++)
        {
            // An edge near the middle is meant before one as steep further out.
            var slope = Math.Abs(v[k + 1] - v[k - 1]) * (1 - 0.4 * Math.Abs(s[k]) / s[n - 1]);
            if (slope > steepest) (at, steepest) = (k, slope);
        }
        if (at < 0) return null;
        var (before, after) = (v[Math.Max(0, at - 3)], v[Math.Min(n - 1, at + 3)]);
        return Math.Abs(after - before) < 0.5 * least ? null : new(before, after, s[at], 0.8);
    }

    static double Sum(ReadOnlySpan<double> s, ReadOnlySpan<double> v, Shape p)
    {
        double sum = 0;
        for (var k = 0; k < s.Length; k++)
        {
            var r = v[k] - p.Before - (p.After - p.Before) * Bell.Below((s[k] - p.Offset) / p.Blur);
            sum += r * r;
        }
        return sum;
    }

    static void Normals(ReadOnlySpan<double> s, ReadOnlySpan<double> v, Shape p, Span<double> normal, Span<double> right)
    {
        normal.Clear();
        right.Clear();
        Span<double> d = stackalloc double[4];
        for (var k = 0; k < s.Length; k++)
        {
            var z = (s[k] - p.Offset) / p.Blur;
            var (below, slope) = (Bell.Below(z), (p.After - p.Before) * Bell.Density(z) / p.Blur);
            var r = v[k] - p.Before - (p.After - p.Before) * below;
            (d[0], d[1], d[2], d[3]) = (1 - below, below, -slope, -slope * z);
            for (var i = 0; i < 4; i++)
            {
                right[i] += d[i] * r;
                for (var j = 0; j < 4; j++) normal[4 * i + j] += d[i] * d[j];
            }
        }
    }
}
