using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Photo.Cameras;

/// <summary>A camera fitted to sights.</summary>
/// <param name="Residuals">Of each sight, px along its normal; NaN for those set aside.</param>
/// <param name="Unit">Root mean square of the residuals in their own standard deviations, freedom counted: 1 when all is as stated.</param>
sealed record FittedCamera(Camera Camera, Uncertain Bloom, double[] Residuals, double Unit, string Words);

/// <summary>
/// Weighted least squares of a camera to sights, sights far from all others set aside, and the lens model chosen by Schwarz's
/// criterion n ln(S/n) + p ln n: a further lens term is fitted only where the marks bear it.
/// </summary>
static class CameraFit
{
    /// <summary>In robust standard deviations. Cause: of 350 good sights one in 30 pictures lies beyond 4.5 (normal); a square under the part's rim lies far beyond.</summary>
    const double Far = 4.5;

    const int MostRounds = 6;

    /// <summary>Sights that must be left over after the unknowns for the lens to be asked at all. Cause: below that the criterion follows noise.</summary>
    const int LeastFreedom = 40;

    /// <param name="start">A homography from mm to px, nine figures.</param>
    /// <param name="blooms">The sights are sides of squares, which may come out too large.</param>
    public static Parsed<FittedCamera> Of(int width, int height, double reach, double[] start, Sight[] sights, bool blooms)
    {
        Camera Make(double[] theta) => new(width, height, reach, theta, new double[Camera.Figures, Camera.Figures], LensModel.None);
        if (StartFigures(width, height, reach, start) is not { } first)
            return Refusal.Of("target", "its middle", "the camera must stand in front of it: the places do not belong to one flat sheet");
        var rich = sights.Length >= 8 + 3 + LeastFreedom;
        var used = Enumerable.Repeat(true, sights.Length).ToArray();
        var widest = rich ? LensModel.Two : LensModel.Assumed;
        Solved? solved = null;
        for (var round = 0; round < MostRounds; round++)
        {
            solved = Solve(widest, solved?.Theta ?? first);
            if (!rich || !Aside(solved.Residuals, sights, used)) break;
        }
        if (!rich) return Told(solved!, LensModel.Assumed, "Too few places tell the lens: it is taken as straight, with 1 % at the corner of the picture left open.");
        var tried = new[] { LensModel.None, LensModel.One, LensModel.Two }.Select(m => (Lens: m, Fit: m == LensModel.Two ? solved! : Solve(m, first))).ToArray();
        var best = tried.MinBy(t => t.Fit.Criterion);
        return Told(best.Fit, best.Lens, Words(best.Lens, best.Fit.Criterion, tried[0].Fit.Criterion));

        Solved Solve(LensModel lens, double[] theta)
        {
            Sight[] kept = [.. sights.Where((_, i) => used[i])];
            var problem = new CameraProblem(kept, Make, lens, blooms);
            var normal = new NormalMatrix(problem.Jacobian, new int[problem.Unknowns]);
            var weights = Enumerable.Repeat(1.0, problem.Jacobian.Rows).ToArray();
            var x = new double[problem.Unknowns];
            theta.AsSpan(0, Math.Min(theta.Length, problem.Unknowns - (blooms ? 1 : 0))).CopyTo(x);
            var minimum = TrustRegion.Minimise(problem, normal, x, weights);
            var camera = Make(problem.Theta(minimum.X));
            var bloom = problem.Bloom(minimum.X);
            double[] residuals = [.. sights.Select(s => s.Normal.Dot(camera.ToPhoto(s.Mm + bloom * s.Outward) - s.Px))];
            var n = problem.Jacobian.Rows;
            var criterion = n * Math.Log(minimum.SumOfSquares / n + double.Epsilon) + problem.Unknowns * Math.Log(n);
            return new(problem, normal, weights, minimum, problem.Theta(minimum.X), residuals, criterion);
        }

        Parsed<FittedCamera> Told(Solved s, LensModel lens, string words)
        {
            var freedom = s.Weights.Length - s.Problem.Unknowns;
            var unit = freedom > 0 ? Math.Sqrt(s.Minimum.SumOfSquares / freedom) : 0;
            // Few sights cannot tell their own noise: they keep what was stated of them unless they do worse.
            var factor = freedom >= LeastFreedom ? unit * unit : Math.Max(1, unit * unit);
            if (Covariance(s, factor) is not { } covariance || !s.Minimum.Converged)
                return Refusal.Of("target", $"{sights.Length / 2} places", "they do not hold a camera: pick corners that are further apart and not on one line");
            var n = s.Problem.Unknowns;
            var figures = new double[Camera.Figures, Camera.Figures];
            var fitted = blooms ? n - 1 : n;
            for (var i = 0; i < fitted; i++)
                for (var k = 0; k < fitted; k++) figures[i, k] = covariance[i, k];
            var bloom = new Uncertain(s.Problem.Bloom(s.Minimum.X), blooms ? Math.Sqrt(covariance[n - 1, n - 1]) : 0);
            var camera = new Camera(width, height, reach, s.Theta, figures, lens);
            return new FittedCamera(camera, bloom, [.. s.Residuals.Select((r, i) => used[i] ? r : double.NaN)], unit, words);
        }
    }

    sealed record Solved(CameraProblem Problem, NormalMatrix Normal, double[] Weights, Minimum Minimum, double[] Theta, double[] Residuals, double Criterion);

    /// <summary>The start in the camera's own measures, the ninth figure 1; null when the sheet's middle is not before the camera.</summary>
    static double[]? StartFigures(int width, int height, double reach, double[] h)
    {
        var half = Math.Sqrt((double)width * width + (double)height * height) / 2;
        var g = new double[9];
        for (var c = 0; c < 3; c++)
        {
            var k = c < 2 ? reach : 1;
            g[c] = k * (h[c] - width / 2.0 * h[6 + c]) / half;
            g[3 + c] = k * (h[3 + c] - height / 2.0 * h[6 + c]) / half;
            g[6 + c] = k * h[6 + c];
        }
        if (!(Math.Abs(g[8]) > 1e-9)) return null;
        return [.. g.Take(8).Select(v => v / g[8])];
    }

    /// <summary>Sets aside, or takes back, by the present residuals; true when anything changed.</summary>
    static bool Aside(double[] residuals, Sight[] sights, bool[] used)
    {
        double[] sizes = [.. residuals.Select((r, i) => Math.Abs(r) / sights[i].Std)];
        var robust = Math.Max(1e-9, 1.4826 * sizes.Order().ElementAt(sizes.Length / 2));
        // A square half of whose sides disagree is not where it should be, or is bent up: all of it goes.
        var bad = sights.Select((s, i) => (s.Mark, Bad: sizes[i] > Far * robust)).GroupBy(s => s.Mark).Where(g => 2 * g.Count(s => s.Bad) >= g.Count()).Select(g => g.Key).ToHashSet();
        var changed = false;
        for (var i = 0; i < used.Length; i++)
        {
            var keep = sizes[i] <= Far * robust && !bad.Contains(sights[i].Mark);
            changed |= keep != used[i];
            used[i] = keep;
        }
        return changed;
    }

    static double[,]? Covariance(Solved s, double factor)
    {
        var n = s.Problem.Unknowns;
        s.Problem.Linearise(s.Minimum.X, new double[s.Weights.Length]);
        s.Normal.Assemble(s.Weights);
        if (!s.Normal.Factor(new double[n])) return null;
        var covariance = new double[n, n];
        double[] unit = new double[n], column = new double[n];
        for (var k = 0; k < n; k++)
        {
            Array.Clear(unit);
            unit[k] = factor;
            s.Normal.Solve(unit, column);
            for (var i = 0; i < n; i++) covariance[i, k] = column[i];
        }
        return covariance;
    }

    static string Words(LensModel lens, double chosen, double straight) => lens switch
    {
        LensModel.None => "The marks show no bending of straight lines by the lens.",
        LensModel.One => $"The marks show that the lens bends straight lines: one term is fitted (criterion {straight - chosen:0} better than none).",
        _ => $"The marks show that the lens bends straight lines: two terms are fitted (criterion {straight - chosen:0} better than none).",
    };
}
