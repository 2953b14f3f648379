using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Cameras;

/// <summary>
/// Where the camera stood: from the homography and a focal length. The two columns of a sheet's homography, seen through the right focal
/// length, are square to each other and equally long (Zhang 2000); so a slanting view tells its own focal length, and a square one does not.
/// </summary>
static class Stands
{
    /// <summary>Diagonal of 24 x 36 mm film, mm.</summary>
    const double FilmDiagonal = 43.2666;

    /// <summary>mm; a phone's main camera, with a standard ± of 20 % (common practice).</summary>
    const double GuessedFocal35 = 27;
    const double GuessedShare = 0.2;

    /// <summary>Standard ± of a stated focal length, as a share: rounding to whole mm and some cropping (common practice).</summary>
    const double StatedShare = 0.05;

    public static Stand Of(Camera camera, double? focal35)
    {
        var told = camera.Theta;
        var own = Focal(told);
        var ownShare = own is null ? double.PositiveInfinity : Share(camera, t => Focal(t) ?? double.NaN, own.Value);
        var from = focal35 is null ? FocalFrom.Guessed : FocalFrom.Stated;
        var (focal, share) = ((focal35 ?? GuessedFocal35) / (FilmDiagonal / 2), focal35 is null ? GuessedShare : StatedShare);
        if (ownShare < share) (from, focal, share) = (FocalFrom.Marks, own!.Value, ownShare);
        var (place, tilt) = Place(told, focal);
        double variance;
        if (from == FocalFrom.Marks) variance = Variance(camera, t => Focal(t) is { } f ? Place(t, f).At.Z : double.NaN);
        else
        {
            var slope = (Place(told, focal * 1.001).At.Z - Place(told, focal * 0.999).At.Z) / (0.002 * focal) * focal * share;
            variance = Variance(camera, t => Place(t, focal).At.Z) + slope * slope;
        }
        var reach = camera.Reach;
        return new(new Vec2(place.X, place.Y) * reach, new(place.Z * reach, Math.Sqrt(variance) * reach), tilt,
            new(focal * camera.HalfDiagonal, focal * share * camera.HalfDiagonal), from);
    }

    /// <summary>In half diagonals; null where the view does not tell.</summary>
    static double? Focal(double[] h)
    {
        // Both conditions are linear in 1/f²; twice the first and the second turn together with the sheet, so they weigh the same.
        var (a, c) = (2 * (h[0] * h[1] + h[3] * h[4]), 2 * h[6] * h[7]);
        var (b, d) = (h[0] * h[0] + h[3] * h[3] - h[1] * h[1] - h[4] * h[4], h[6] * h[6] - h[7] * h[7]);
        var inverse = -(a * c + b * d) / (a * a + b * b);
        return inverse > 0 ? 1 / Math.Sqrt(inverse) : null;
    }

    /// <summary>The lens's place over the sheet in reaches, and the tilt.</summary>
    static (Vec3 At, double Tilt) Place(double[] h, double f)
    {
        Vec3 a = new(h[0] / f, h[3] / f, h[6]), b = new(h[1] / f, h[4] / f, h[7]), t = new(h[2] / f, h[5] / f, 1);
        var scale = 2 / (a.Length + b.Length);
        (a, b, t) = (a.Unit, b.Unit, t * scale);
        // The nearest square pair to two unit vectors that are nearly square.
        Vec3 sum = (a + b).Unit, apart = (a - b).Unit;
        (a, b) = ((sum + apart) * Math.Sqrt(0.5), (sum - apart) * Math.Sqrt(0.5));
        var c = a.Cross(b);
        return (new(-a.Dot(t), -b.Dot(t), -c.Dot(t)), Math.Acos(Math.Clamp(-c.Z, -1, 1)));
    }

    static double Share(Camera camera, Func<double[], double> of, double value) => Math.Sqrt(Variance(camera, of)) / value;

    /// <summary>By differences on both sides; infinite where the figure ceases to exist within a step.</summary>
    static double Variance(Camera camera, Func<double[], double> of)
    {
        var slope = new double[Camera.Figures];
        for (var k = 0; k < Camera.Figures; k++)
        {
            var step = 0.1 * Math.Sqrt(camera.Covariance[k, k]);
            if (!(step > 0)) continue;
            double[] high = [.. camera.Theta], low = [.. camera.Theta];
            (high[k], low[k]) = (high[k] + step, low[k] - step);
            slope[k] = (of(high) - of(low)) / (2 * step);
        }
        var variance = Spots.Product(camera.Covariance, slope, slope);
        return double.IsFinite(variance) ? Math.Max(0, variance) : double.PositiveInfinity;
    }
}
