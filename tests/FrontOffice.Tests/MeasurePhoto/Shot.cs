using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.MeasurePhoto;

/// <summary>
/// A photograph of the plate on the target sheet, made ray by ray: pinhole, one radial lens term, several rays a pixel, light that falls
/// off to one side, noise of the sensor. Nothing of it is shared with the engine but the target's squares.
/// </summary>
/// <param name="Above">Height of the lens over the sheet, mm.</param>
/// <param name="Tilt">Off straight down, radians, towards the lower edge of the sheet.</param>
/// <param name="Focal35">mm as on 36 × 24 mm film.</param>
/// <param name="K1">Radial term, at half a diagonal.</param>
sealed record Shot(int Width, int Height, double Above, double Tilt, double Focal35, double K1, Target Target)
{
    /// <summary>Rays a pixel each way.</summary>
    public int Rays { get; init; } = 2;

    /// <summary>Of the 8-bit figures, one standard deviation.</summary>
    public double Noise { get; init; } = 1.5;

    /// <summary>Half the diagonal of 36 × 24 mm film.</summary>
    const double FilmHalf = 21.633;

    double Half => Math.Sqrt((double)Width * Width + (double)Height * Height) / 2;

    double Focal => Focal35 / FilmHalf * Half;

    /// <summary>The lens, over the sheet and back towards its lower edge, looking at its middle.</summary>
    Vec3 Lens => new(0, -Above * Math.Tan(Tilt), Above);

    Vec3 Forward => (Lens * -1).Unit;

    static Vec3 Right => new(1, 0, 0);

    Vec3 Up => Right.Cross(Forward);

    /// <summary>Where a point in space is in the picture, px.</summary>
    public Vec2 Px(Vec3 at)
    {
        var ray = at - Lens;
        var depth = ray.Dot(Forward);
        Vec2 u = new Vec2(ray.Dot(Right) / depth, -ray.Dot(Up) / depth) * (Focal / Half);
        return new Vec2(Width / 2.0, Height / 2.0) + u * (1 + K1 * u.Dot(u)) * Half;
    }

    /// <summary>Grey, upright.</summary>
    public Raster Take(ulong seed)
    {
        var pixels = new byte[Width * Height];
        Parallel.For(0, Height, y =>
        {
            var chance = new Chance(seed * 1_000_003 + (ulong)y);
            for (var x = 0; x < Width; x++)
            {
                double light = 0;
                for (var j = 0; j < Rays; j++)
                    for (var i = 0; i < Rays; i++) light += Seen(x + (i + 0.5) / Rays, y + (j + 0.5) / Rays);
                var value = 255 * Curve(light / (Rays * Rays)) + Noise * chance.Normal();
                pixels[y * Width + x] = (byte)Math.Clamp(Math.Round(value), 0, 255);
            }
        });
        return new(Width, Height, 1, pixels);
    }

    /// <summary>Light from where a ray ends, 0 to 1.</summary>
    double Seen(double px, double py)
    {
        Vec2 seen = new((px - Width / 2.0) / Half, (py - Height / 2.0) / Half), u = seen;
        for (var n = 0; n < 6; n++) u = seen / (1 + K1 * u.Dot(u));
        u *= Half / Focal;
        var ray = Forward + Right * u.X - Up * u.Y;
        Vec2 At(double height) => Lens + ray * ((height - Lens.Z) / ray.Z) is var p ? new(p.X, p.Y) : default;

        var top = At(HornPlate.Thickness);
        var fall = 0.95 - 0.0012 * top.X - 0.0008 * top.Y;
        if (HornPlate.Covers(top)) return 0.30 * fall;
        for (var step = 1; step < 4; step++)
            if (HornPlate.Covers(At(HornPlate.Thickness * (1 - step / 4.0)))) return 0.14 * fall;
        var ground = At(0);
        if (HornPlate.Covers(ground)) return 0.14 * fall;
        return fall * (Math.Abs(ground.X) > Target.Paper.Width / 2 || Math.Abs(ground.Y) > Target.Paper.Height / 2 ? 0.18 : Black(ground) ? 0.04 : 0.85);
    }

    bool Black(Vec2 at)
    {
        var column = (int)Math.Round(at.X / Target.Pitch + (Target.Columns - 1) / 2.0);
        var row = (int)Math.Round(at.Y / Target.Pitch + (Target.Rows - 1) / 2.0);
        var index = Target.IndexOf(column, row);
        if (index < 0) return false;
        var off = at - Target.Middle(index);
        return Math.Max(Math.Abs(off.X), Math.Abs(off.Y)) <= Target.Side / 2 && !(Target.HasEye(index) && off.Length < Target.Eye / 2);
    }

    /// <summary>IEC 61966-2-1 (sRGB).</summary>
    static double Curve(double v) => v <= 0.0031308 ? 12.92 * v : 1.055 * Math.Pow(v, 1 / 2.4) - 0.055;
}
