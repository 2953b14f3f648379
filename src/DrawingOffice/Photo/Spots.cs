using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>
/// From the picture to the face with every ±: the picking's, the camera's (covariance of the fit, first order), and what differs
/// between the print's two directions.
/// </summary>
static class Spots
{
    /// <summary>A line of sight met with the sheet: where, mm; how it moves with the picture's place (mm per px) and with the camera's ten figures.</summary>
    public readonly record struct Met(Vec2 At, Vec2 ByU, Vec2 ByV, double[] XByTheta, double[] YByTheta);

    public static Met Meet(Camera camera, Vec2 px)
    {
        var at = camera.ToSheet(px);
        double[] u = new double[Camera.Figures], v = new double[Camera.Figures];
        var (_, byX, byY) = camera.Linear(at, u, v);
        var area = byX.Cross(byY);
        Vec2 byU = new(byY.Y / area, -byX.Y / area), byV = new(-byY.X / area, byX.X / area);
        double[] x = new double[Camera.Figures], y = new double[Camera.Figures];
        for (var k = 0; k < Camera.Figures; k++) (x[k], y[k]) = (-(byU.X * u[k] + byV.X * v[k]), -(byU.Y * u[k] + byV.Y * v[k]));
        return new(at, byU, byV, x, y);
    }

    public static Spot At(TruePhoto photo, Vec2 px, double std)
    {
        var met = Meet(photo.Camera, px);
        var spread = (Spread.Along(met.ByU) + Spread.Along(met.ByV)) * (std * std) + OfCamera(photo.Camera, met) + OfModel(photo) + OfPrint(photo.Print, met.At);
        return OnFace(photo, met.At, spread);
    }

    /// <summary>A place of the sheet with its ±, lifted to the face.</summary>
    public static Spot OnFace(TruePhoto photo, Vec2 sheet, Spread spread)
    {
        var face = photo.Face;
        return new(face.Raise(sheet), spread * ((1 - face.Share) * (1 - face.Share)), !Hull.Holds(photo.Hull, sheet));
    }

    public static Spread OfCamera(Camera camera, Met met) =>
        new(Product(camera.Covariance, met.XByTheta, met.XByTheta), Product(camera.Covariance, met.XByTheta, met.YByTheta), Product(camera.Covariance, met.YByTheta, met.YByTheta));

    /// <summary>
    /// What no camera of this kind can follow (paper not quite flat, a lens of its own): half of what the marks miss their places by. It
    /// does not grow less with the number of marks, as the camera's own ± does.
    /// </summary>
    public static Spread OfModel(TruePhoto photo) => Spread.Round(0.5 * photo.Residual);

    /// <summary>Half the difference between the two directions lengthens one as it shortens the other.</summary>
    public static Spread OfPrint(PrintScale print, Vec2 at) => Spread.Along(new Vec2(at.X, -at.Y) * print.AcrossStd);

    public static double Product(double[,] covariance, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++)
            for (var k = 0; k < b.Length; k++) sum += a[i] * covariance[i, k] * b[k];
        return sum;
    }
}
