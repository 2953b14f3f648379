using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Photo.Cameras;

/// <summary>
/// The residuals of all sights, in their own standard deviations: unknowns are the eight figures of the homography, the lens terms asked
/// for, and (last) the bloom, mm. Where the lens is assumed, one more row holds k₁ near 0.
/// </summary>
sealed class CameraProblem : IResiduals
{
    /// <summary>
    /// Standard ± of k₁ where nothing tells it: phones straighten their pictures to about 1 % at the corner (common practice).
    /// </summary>
    public const double AssumedStd = 0.01;

    readonly Sight[] _sights;
    readonly Func<double[], Camera> _camera;
    readonly int _lens;
    readonly bool _blooms;
    readonly bool _assumed;
    readonly double[] _u = new double[Camera.Figures];
    readonly double[] _v = new double[Camera.Figures];

    public CameraProblem(Sight[] sights, Func<double[], Camera> camera, LensModel lens, bool blooms)
    {
        (_sights, _camera, _blooms, _assumed) = (sights, camera, blooms, lens == LensModel.Assumed);
        _lens = lens switch { LensModel.None => 0, LensModel.Two => 2, _ => 1 };
        Unknowns = 8 + _lens + (blooms ? 1 : 0);
        var all = Enumerable.Range(0, Unknowns).ToArray();
        var pattern = Enumerable.Repeat(all, sights.Length).ToList();
        if (_assumed) pattern.Add([8]);
        Jacobian = new SparseRows(pattern, Unknowns);
    }

    public int Unknowns { get; }

    public SparseRows Jacobian { get; }

    /// <summary>The ten figures among the unknowns; terms that are not fitted are 0.</summary>
    public double[] Theta(ReadOnlySpan<double> x)
    {
        var theta = new double[Camera.Figures];
        x[..(8 + _lens)].CopyTo(theta);
        return theta;
    }

    public double Bloom(ReadOnlySpan<double> x) => _blooms ? x[Unknowns - 1] : 0;

    public void Evaluate(ReadOnlySpan<double> x, Span<double> residuals)
    {
        var (camera, bloom) = (_camera(Theta(x)), Bloom(x));
        for (var i = 0; i < _sights.Length; i++)
        {
            var s = _sights[i];
            residuals[i] = s.Normal.Dot(camera.ToPhoto(s.Mm + bloom * s.Outward) - s.Px) / s.Std;
        }
        if (_assumed) residuals[_sights.Length] = x[8] / AssumedStd;
    }

    public void Linearise(ReadOnlySpan<double> x, Span<double> residuals)
    {
        var (camera, bloom) = (_camera(Theta(x)), Bloom(x));
        for (var i = 0; i < _sights.Length; i++)
        {
            var s = _sights[i];
            var (px, byX, byY) = camera.Linear(s.Mm + bloom * s.Outward, _u, _v);
            residuals[i] = s.Normal.Dot(px - s.Px) / s.Std;
            var row = Jacobian.ValuesOf(i);
            for (var k = 0; k < 8 + _lens; k++) row[k] = (s.Normal.X * _u[k] + s.Normal.Y * _v[k]) / s.Std;
            if (_blooms) row[Unknowns - 1] = s.Normal.Dot(byX * s.Outward.X + byY * s.Outward.Y) / s.Std;
        }
        if (!_assumed) return;
        residuals[_sights.Length] = x[8] / AssumedStd;
        Jacobian.ValuesOf(_sights.Length)[0] = 1 / AssumedStd;
    }
}
