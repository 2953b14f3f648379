using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Edges;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.DrawingOffice.Photo.Tracing;
using WitnessMark.DrawingOffice.Tests.Photo;
using WitnessMark.Maths;

namespace WitnessMark.Bench;

/// <summary>
/// A rendered colour photograph of 12 million pixels, slanting by 25° through a lens that bends lines: laid true to scale at 12 million pixels, the
/// target found, a hole and a stretch of edge. The alternative lays the same picture true plainly: each pixel through the camera's whole map,
/// between its four neighbours in doubles.
/// </summary>
public class PhotoBench
{
    static readonly Pinhole s_camera = new(4000, 3000, 3120, 25, 70, 95, 420, default, -0.05);
    static readonly Vec2 s_hole = new(10, 20);
    Raster _colour = null!;
    TruePhoto _photo = null!;

    [GlobalSetup]
    public void Take()
    {
        var plate = new Plate([new(-60, -90), new(60, -90), new(60, 90), new(-60, 90)], [(s_hole, 12)]);
        var grey = Rendered.Picture(new Scene(Target.A4, plate), s_camera, 1);
        _colour = new Raster(4000, 3000, 3, [.. grey.Pixels.SelectMany(p => new[] { p, p, p })]);
        _photo = MakeTrue.Of(_colour, new()).Value;
    }

    [Benchmark]
    public TruePicture Rectified() => Rectify.Of(_photo, _colour, new(-95, -135), new(95, 135)).Value;

    [Benchmark(Baseline = true)]
    public byte[] PixelByPixel()
    {
        var scale = _photo.Camera.PixelsPerMm(Vec2.Zero);
        var k = Math.Min(scale, Math.Sqrt(12_000_000 / (190.0 * 270)) * 0.999);
        var (w, h) = ((int)Math.Round(190 * k), (int)Math.Round(270 * k));
        var made = new byte[w * h * 3];
        for (var j = 0; j < h; j++)
            for (var i = 0; i < w; i++)
            {
                var px = _photo.ToPhoto(new(-95 + (i + 0.5) / k, 135 - (j + 0.5) / k));
                var (u, v) = (Math.Clamp(px.X - 0.5, 0, 3998), Math.Clamp(px.Y - 0.5, 0, 2998));
                var (a, b) = ((int)u, (int)v);
                var (x, y) = (u - a, v - b);
                for (var c = 0; c < 3; c++)
                {
                    double At(int p, int q) => _colour.Pixels[(q * 4000 + p) * 3 + c];
                    made[(j * w + i) * 3 + c] = (byte)((1 - y) * ((1 - x) * At(a, b) + x * At(a + 1, b)) + y * ((1 - x) * At(a, b + 1) + x * At(a + 1, b + 1)) + 0.5);
                }
            }
        return made;
    }

    [Benchmark]
    public TruePhoto TargetFound() => MakeTrue.Of(_colour, new()).Value;

    [Benchmark]
    public HoleSeen Hole() => HoleFit.Of(_photo, s_camera.Project(s_hole)).Value;

    [Benchmark]
    public int StretchOfEdge() => Snap.Path(_photo.Light, s_camera.Project(new Vec2(-60, -90)), s_camera.Project(new Vec2(60, -90))).Length;
}
