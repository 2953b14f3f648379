using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>Covariance of a place, squared units of the place (mm² or px²).</summary>
public readonly record struct Spread(double XX, double XY, double YY)
{
    public double StdX => Math.Sqrt(Math.Max(0, XX));

    public double StdY => Math.Sqrt(Math.Max(0, YY));

    /// <summary>Root of the mean of the two variances: one figure for both directions.</summary>
    public double Std => Math.Sqrt(Math.Max(0, (XX + YY) / 2));

    public static Spread Round(double std) => new(std * std, 0, std * std);

    public static Spread operator +(Spread a, Spread b) => new(a.XX + b.XX, a.XY + b.XY, a.YY + b.YY);

    public static Spread operator *(Spread a, double k) => new(a.XX * k, a.XY * k, a.YY * k);

    /// <summary>The spread of v·vᵀ: one error of one standard deviation along v.</summary>
    public static Spread Along(Vec2 v) => new(v.X * v.X, v.X * v.Y, v.Y * v.Y);

    /// <summary>Standard deviation along a direction of length 1.</summary>
    public double Toward(Vec2 d) => Math.Sqrt(Math.Max(0, d.X * d.X * XX + 2 * d.X * d.Y * XY + d.Y * d.Y * YY));

    /// <summary>The standard ellipse.</summary>
    public Ellipse Ellipse
    {
        get
        {
            var (half, apart) = ((XX + YY) / 2, Math.Sqrt((XX - YY) * (XX - YY) / 4 + XY * XY));
            return new(Math.Sqrt(Math.Max(0, half + apart)), Math.Sqrt(Math.Max(0, half - apart)), 0.5 * Math.Atan2(2 * XY, XX - YY));
        }
    }
}
