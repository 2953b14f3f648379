using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Cameras;

/// <summary>What the lens does beyond a pinhole: nothing, one radial term, two, or one that is assumed because nothing tells.</summary>
public enum LensModel { None, One, Two, Assumed }

/// <summary>
/// From the sheet (mm) to the picture (px) and back: a homography, then radial distortion about the picture's middle,
/// u → u (1 + k₁ r² + k₂ r⁴), r in half diagonals of the picture (so r ≤ 1).
/// </summary>
/// <remarks>
/// The eight figures of the homography work on sheet places over <paramref name="Reach"/> and on picture places from the middle over the half
/// diagonal, with the ninth held at 1; the sheet's middle must lie in front of the camera.
/// </remarks>
/// <param name="Reach">mm; what sheet places are divided by.</param>
/// <param name="Theta">Eight of the homography by rows, then k₁ and k₂.</param>
/// <param name="Covariance">Of theta, 10 x 10; rows of what was not fitted are 0.</param>
public sealed record Camera(int Width, int Height, double Reach, double[] Theta, double[,] Covariance, LensModel Lens)
{
    public const int Figures = 10;

    /// <summary>px.</summary>
    public double HalfDiagonal { get; } = Math.Sqrt((double)Width * Width + (double)Height * Height) / 2;

    public Vec2 Middle => new(Width / 2.0, Height / 2.0);

    /// <summary>Where a place of the sheet (mm) is in the picture (px). NaN behind the camera.</summary>
    public Vec2 ToPhoto(Vec2 mm)
    {
        var (x, y) = (mm.X / Reach, mm.Y / Reach);
        var t = Theta;
        var w = t[6] * x + t[7] * y + 1;
        if (!(w > 1e-9)) return new(double.NaN, double.NaN);
        var (u, v) = ((t[0] * x + t[1] * y + t[2]) / w, (t[3] * x + t[4] * y + t[5]) / w);
        var q = u * u + v * v;
        var g = HalfDiagonal * (1 + q * (t[8] + q * t[9]));
        return new(Width / 2.0 + g * u, Height / 2.0 + g * v);
    }

    /// <summary>Where a place of the picture (px) is on the sheet (mm). NaN where the line of sight misses the sheet.</summary>
    public Vec2 ToSheet(Vec2 px)
    {
        var d = (px - Middle) / HalfDiagonal;
        var u = d * Undistort(d.Length);
        var t = Theta;
        // The adjugate of the homography.
        var x = (t[4] - t[5] * t[7]) * u.X + (t[2] * t[7] - t[1]) * u.Y + (t[1] * t[5] - t[2] * t[4]);
        var y = (t[5] * t[6] - t[3]) * u.X + (t[0] - t[2] * t[6]) * u.Y + (t[2] * t[3] - t[0] * t[5]);
        var w = (t[3] * t[7] - t[4] * t[6]) * u.X + (t[1] * t[6] - t[0] * t[7]) * u.Y + (t[0] * t[4] - t[1] * t[3]);
        var k = Reach / w;
        var mm = new Vec2(k * x, k * y);
        return t[6] * mm.X + t[7] * mm.Y + Reach > 0 ? mm : new(double.NaN, double.NaN);
    }

    /// <summary>Radius before the lens over radius after it; Newton, to 1e-14.</summary>
    double Undistort(double after)
    {
        var (k1, k2) = (Theta[8], Theta[9]);
        if ((k1 == 0 && k2 == 0) || after == 0) return 1;
        var r = after;
        for (var n = 0; n < 50; n++)
        {
            var q = r * r;
            var step = (r * (1 + q * (k1 + q * k2)) - after) / Math.Max(0.1, 1 + q * (3 * k1 + 5 * q * k2));
            r -= step;
            if (Math.Abs(step) < 1e-14) break;
        }
        return r / after;
    }

    /// <summary>
    /// A place of the sheet (mm) in the picture with its derivatives: by x and y (px per mm), and by the ten figures of <see cref="Theta"/>
    /// (px per unit), filled into <paramref name="byU"/> and <paramref name="byV"/>.
    /// </summary>
    public (Vec2 Px, Vec2 ByX, Vec2 ByY) Linear(Vec2 mm, Span<double> byU, Span<double> byV)
    {
        var (x, y) = (mm.X / Reach, mm.Y / Reach);
        var t = Theta;
        var w = t[6] * x + t[7] * y + 1;
        var (u, v) = ((t[0] * x + t[1] * y + t[2]) / w, (t[3] * x + t[4] * y + t[5]) / w);
        var q = u * u + v * v;
        var (g, slope) = (1 + q * (t[8] + q * t[9]), 2 * (t[8] + 2 * q * t[9]));
        // Derivative of the distortion, px.
        var r = HalfDiagonal;
        var (uu, uv, vv) = (r * (g + slope * u * u), r * slope * u * v, r * (g + slope * v * v));
        Span<double> du = [x / w, y / w, 1 / w, 0, 0, 0, -u * x / w, -u * y / w];
        Span<double> dv = [0, 0, 0, x / w, y / w, 1 / w, -v * x / w, -v * y / w];
        for (var k = 0; k < 8; k++) (byU[k], byV[k]) = (uu * du[k] + uv * dv[k], uv * du[k] + vv * dv[k]);
        (byU[8], byV[8]) = (r * q * u, r * q * v);
        (byU[9], byV[9]) = (r * q * q * u, r * q * q * v);
        var (ux, uy) = ((t[0] - u * t[6]) / (w * Reach), (t[1] - u * t[7]) / (w * Reach));
        var (vx, vy) = ((t[3] - v * t[6]) / (w * Reach), (t[4] - v * t[7]) / (w * Reach));
        return (new(Width / 2.0 + r * g * u, Height / 2.0 + r * g * v), new(uu * ux + uv * vx, uv * ux + vv * vx), new(uu * uy + uv * vy, uv * uy + vv * vy));
    }

    /// <summary>Pixels in a millimetre at a place of the sheet: the root of the area's magnification.</summary>
    public double PixelsPerMm(Vec2 mm)
    {
        Span<double> a = stackalloc double[Figures], b = stackalloc double[Figures];
        var (_, x, y) = Linear(mm, a, b);
        return Math.Sqrt(Math.Abs(x.Cross(y)));
    }
}
