using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Photo;

/// <summary>A camera over a sheet, in words of its own: it shares no code with the engine that is tested with it.</summary>
/// <param name="Slant">Between the line of sight and straight down, degrees.</param>
/// <param name="Bearing">From which side the camera looks, degrees.</param>
/// <param name="Roll">About the line of sight, degrees.</param>
/// <param name="Distance">From the lens to the place looked at, mm.</param>
/// <param name="Focal">px.</param>
/// <param name="K1">Radial, in the tangent of the ray's angle: t → t (1 + K1 t² + K2 t⁴).</param>
sealed record Pinhole(int Width, int Height, double Focal, double Slant, double Bearing, double Roll, double Distance, Vec2 LookAt = default, double K1 = 0, double K2 = 0)
{
    readonly (Vec3 Eye, Vec3 Right, Vec3 Down, Vec3 Ahead) _axes = Axes(Slant, Bearing, Roll, Distance, LookAt);

    public Vec3 Eye => _axes.Eye;

    static (Vec3, Vec3, Vec3, Vec3) Axes(double slant, double bearing, double roll, double distance, Vec2 lookAt)
    {
        var (s, b, r) = (slant * Math.PI / 180, bearing * Math.PI / 180, roll * Math.PI / 180);
        var from = new Vec3(Math.Sin(s) * Math.Cos(b), Math.Sin(s) * Math.Sin(b), Math.Cos(s));
        var ahead = -from;
        var side = new Vec3(-Math.Sin(b), Math.Cos(b), 0);
        var lower = ahead.Cross(side);
        var right = side * Math.Cos(r) + lower * Math.Sin(r);
        return (new Vec3(lookAt.X, lookAt.Y, 0) + from * distance, right, ahead.Cross(right), ahead);
    }

    /// <summary>Where a place in space shows.</summary>
    public Vec2 Project(Vec3 p)
    {
        var d = p - Eye;
        var z = d.Dot(_axes.Ahead);
        var (x, y) = (d.Dot(_axes.Right) / z, d.Dot(_axes.Down) / z);
        var q = x * x + y * y;
        var g = Focal * (1 + K1 * q + K2 * q * q);
        return new(Width / 2.0 + g * x, Height / 2.0 + g * y);
    }

    public Vec2 Project(Vec2 p, double height = 0) => Project(new Vec3(p.X, p.Y, height));

    /// <summary>The direction a place of the picture looks in.</summary>
    public Vec3 Ray(double u, double v)
    {
        var (x, y) = ((u - Width / 2.0) / Focal, (v - Height / 2.0) / Focal);
        var far = Math.Sqrt(x * x + y * y);
        // The radius before the lens, by putting it in again and again.
        if ((K1 != 0 || K2 != 0) && far > 0)
        {
            var t = far;
            for (var n = 0; n < 24; n++) t = far / (1 + K1 * t * t + K2 * t * t * t * t);
            (x, y) = (x * t / far, y * t / far);
        }
        return _axes.Ahead + _axes.Right * x + _axes.Down * y;
    }
}

/// <summary>A flat part: an outline of corners, round holes, how much light it sends back, and its height over the sheet.</summary>
sealed record Plate(ImmutableArray<Vec2> Corners, ImmutableArray<(Vec2 At, double Diameter)> Holes, double Albedo = 0.25, double Height = 0)
{
    /// <summary>Light that its walls send back; null for a face that floats without any.</summary>
    public double? Wall { get; init; }

    public bool Holds(Vec2 p)
    {
        var inside = false;
        for (int i = 0, k = Corners.Length - 1; i < Corners.Length; k = i++)
            if ((Corners[i].Y > p.Y) != (Corners[k].Y > p.Y) && p.X < (Corners[k].X - Corners[i].X) * (p.Y - Corners[i].Y) / (Corners[k].Y - Corners[i].Y) + Corners[i].X) inside = !inside;
        return inside && Holes.All(h => (p - h.At).Length > h.Diameter / 2);
    }
}

/// <summary>What lies on the bench, and the light.</summary>
sealed record Scene(Target? Target, Plate? Plate = null)
{
    /// <summary>Light at the left edge of the sheet over that at the right edge.</summary>
    public double Shade { get; init; } = 1;

    /// <summary>Places of the sheet that something else covers, mm.</summary>
    public Func<Vec2, bool>? Covered { get; init; }

    /// <summary>A square's own middle, and how far it is printed off it, mm.</summary>
    public (Vec2 Middle, Vec2 By)? Moved { get; init; }

    /// <summary>How far the paper's print has crept at a place of the sheet, mm: a sheet that is not flat.</summary>
    public Func<Vec2, Vec2>? Crept { get; init; }

    /// <summary>Paper about 0.75, print 0.05, bench 0.15.</summary>
    double Albedo(Vec2 p)
    {
        if (Covered?.Invoke(p) == true) return 0.3;
        if (Crept is { } crept) p -= crept(p);
        if (Target is not { } t || Math.Abs(p.X) > t.Paper.Width / 2 || Math.Abs(p.Y) > t.Paper.Height / 2) return 0.15;
        var (a, b) = (p.X / 20 + (t.Columns - 1) / 2.0, p.Y / 20 + (t.Rows - 1) / 2.0);
        var (i, j) = ((int)Math.Round(a), (int)Math.Round(b));
        if (i < 0 || j < 0 || i >= t.Columns || j >= t.Rows || (i > 0 && j > 0 && i < t.Columns - 1 && j < t.Rows - 1)) return 0.75;
        var (x, y) = (20 * (a - i), 20 * (b - j));
        if (Moved is { } moved && (moved.Middle - p).Length < 9) (x, y) = (x - moved.By.X, y - moved.By.Y);
        if (Math.Abs(x) > 5 || Math.Abs(y) > 5) return 0.75;
        return t.Key[Order(t, i, j)] == '1' && x * x + y * y < 4 ? 0.75 : 0.05;
    }

    /// <summary>Anticlockwise from the bottom left, counted by walking.</summary>
    static int Order(Target t, int i, int j)
    {
        var (x, y, n) = (0, 0, 0);
        while (x != i || y != j)
        {
            if (y == 0 && x < t.Columns - 1) x++;
            else if (x == t.Columns - 1 && y < t.Rows - 1) y++;
            else if (y == t.Rows - 1 && x > 0) x--;
            else y--;
            n++;
        }
        return n;
    }

    public double Seen(Vec3 eye, Vec3 ray)
    {
        if (ray.Z > -1e-6) return 0.1;
        Vec2 At(double height) => new(eye.X - ray.X * (eye.Z - height) / ray.Z, eye.Y - ray.Y * (eye.Z - height) / ray.Z);
        var sheet = At(0);
        var light = 1 + (Shade - 1) * (0.5 - Math.Clamp(sheet.X / 300, -0.5, 0.5));
        if (Plate is { } plate && plate.Holds(At(plate.Height))) return plate.Albedo * light;
        if (Plate is { Wall: { } wall } walled && walled.Holds(sheet)) return wall * light;
        return Albedo(sheet) * light;
    }
}

/// <summary>Pictures of a scene: many samples where something changes, blur, noise, and the eight-bit curve of IEC 61966-2-1.</summary>
static class Rendered
{
    /// <summary>Samples a side; each row of them is shifted, so that an edge along the pixels is met at Fine² places, not at Fine.</summary>
    const int Fine = 6;

    /// <summary>Light of each pixel, 0 to 1, no noise.</summary>
    public static float[] Clean(Scene scene, Pinhole camera, double blur = 0.7)
    {
        var (w, h) = (camera.Width, camera.Height);
        float At(double u, double v) => (float)scene.Seen(camera.Eye, camera.Ray(u, v));
        var corner = new float[(w + 1) * (h + 1)];
        for (var j = 0; j <= h; j++)
            for (var i = 0; i <= w; i++) corner[j * (w + 1) + i] = At(i, j);
        var light = new float[w * h];
        for (var j = 0; j < h; j++)
            for (var i = 0; i < w; i++)
            {
                var k = j * (w + 1) + i;
                float a = corner[k], b = corner[k + 1], c = corner[k + w + 1], d = corner[k + w + 2];
                var (low, high) = (Math.Min(Math.Min(a, b), Math.Min(c, d)), Math.Max(Math.Max(a, b), Math.Max(c, d)));
                if (high - low < 0.01f)
                {
                    light[j * w + i] = (a + b + c + d) / 4;
                    continue;
                }
                float sum = 0;
                for (var y = 0; y < Fine; y++)
                    for (var x = 0; x < Fine; x++) sum += At(i + (x + (y + 0.5) / Fine) / Fine, j + (y + (x + 0.5) / Fine) / Fine);
                light[j * w + i] = sum / (Fine * Fine);
            }
        return Blurred(light, w, h, blur);
    }

    /// <param name="curve">Power of the light before the standard's curve: 1 is a camera that keeps to it.</param>
    /// <param name="noise">Standard deviation of a pixel, of 255, on the eight-bit scale.</param>
    public static Raster Picture(float[] light, int width, int height, double noise, Chance chance, double exposure = 1.1, double curve = 1)
    {
        var pixels = new byte[light.Length];
        for (var k = 0; k < light.Length; k++)
        {
            var v = Math.Pow(Math.Clamp(light[k] * exposure, 0, 1), curve);
            var coded = v <= 0.0031308 ? 12.92 * v : 1.055 * Math.Pow(v, 1 / 2.4) - 0.055;
            pixels[k] = (byte)Math.Clamp(Math.Round(255 * coded + noise * chance.Normal()), 0, 255);
        }
        return new Raster(width, height, 1, pixels);
    }

    public static Raster Picture(Scene scene, Pinhole camera, ulong seed, double noise = 2, double blur = 0.7) =>
        Picture(Clean(scene, camera, blur), camera.Width, camera.Height, noise, new Chance(seed));

    static float[] Blurred(float[] light, int w, int h, double sigma)
    {
        if (sigma <= 0) return light;
        var reach = (int)Math.Ceiling(3.5 * sigma);
        double[] kernel = [.. Enumerable.Range(-reach, 2 * reach + 1).Select(d => Math.Exp(-d * d / (2 * sigma * sigma)))];
        var whole = kernel.Sum();
        var (rows, both) = (new float[w * h], new float[w * h]);
        for (var j = 0; j < h; j++)
            for (var i = 0; i < w; i++)
            {
                double sum = 0;
                for (var d = -reach; d <= reach; d++) sum += kernel[d + reach] * light[j * w + Math.Clamp(i + d, 0, w - 1)];
                rows[j * w + i] = (float)(sum / whole);
            }
        for (var j = 0; j < h; j++)
            for (var i = 0; i < w; i++)
            {
                double sum = 0;
                for (var d = -reach; d <= reach; d++) sum += kernel[d + reach] * rows[Math.Clamp(j + d, 0, h - 1) * w + i];
                both[j * w + i] = (float)(sum / whole);
            }
        return both;
    }
}
