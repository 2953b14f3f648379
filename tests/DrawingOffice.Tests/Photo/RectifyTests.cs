using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Photo;

/// <summary>Photographs laid true to scale.</summary>
public class RectifyTests
{
    static readonly Pinhole s_camera = new(1200, 900, 850, 35, 60, 20, 400, default, -0.1);

    static (TruePhoto Photo, Raster Raster) Taken()
    {
        var raster = Rendered.Picture(new Scene(Target.A4), s_camera, 41);
        return (MakeTrue.Of(raster, TrueTests.Measured).Value, raster);
    }

    [Fact]
    [Truth(Grade.Property, "every pixel against the camera's own map, one by one, bilinear in doubles")]
    public void Each_pixel_is_what_the_photograph_shows_there()
    {
        var (photo, raster) = Taken();
        var made = Rectify.Of(photo, raster, new(-90, -130), new(90, 130), 4).Value;
        Assert.Equal((720, 1040), (made.Raster.Width, made.Raster.Height));
        double worst = 0;
        for (var j = 0; j < 1040; j += 7)
            for (var i = 0; i < 720; i += 5)
            {
                var px = photo.ToPhoto(made.ToFace(new(i + 0.5, j + 0.5)));
                if (px.X < 1 || px.Y < 1 || px.X > 1199 || px.Y > 899) continue;
                var (u, v) = (px.X - 0.5, px.Y - 0.5);
                var (a, b, x, y) = ((int)u, (int)v, u - Math.Floor(u), v - Math.Floor(v));
                double At(int p, int q) => raster.Pixels[Math.Min(q, 899) * 1200 + Math.Min(p, 1199)];
                var wanted = (1 - y) * ((1 - x) * At(a, b) + x * At(a + 1, b)) + y * ((1 - x) * At(a, b + 1) + x * At(a + 1, b + 1));
                // A step of light of 150 over 0.05 px, and rounding.
                worst = Math.Max(worst, Math.Abs(wanted - made.Raster.Pixels[j * 720 + i]));
            }
        Assert.InRange(worst, 0, 8);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "a renderer of the tests' own; squares of 10 mm at 20 mm")]
    public void Squares_of_the_sheet_stand_square_and_true_to_scale()
    {
        var (photo, raster) = Taken();
        var made = Rectify.Of(photo, raster, new(-95, -135), new(95, 135), 5).Value;
        for (var k = 0; k < 44; k++)
        {
            var middle = made.ToPicture(Target.A4.Middle(k));
            byte At(double dx, double dy) => made.Raster.Pixels[(int)(middle.Y - 5 * dy) * made.Raster.Width + (int)(middle.X + 5 * dx)];
            // Outside the eye and inside the square dark; a millimetre outside it light, where the photograph shows that.
            if (photo.Marks.All(m => m.Index != k)) continue;
            Assert.True(At(3.5, 3.5) < 110 && At(-3.5, -3.5) < 110 && At(-3.5, 3.5) < 110 && At(3.5, -3.5) < 110);
            Assert.Equal(Target.A4.HasEye(k), At(0, 0) > 120);
        }
    }

    [Fact]
    [Truth(Grade.Property, "colour keeps its channels; what is not shown is white; the scale is bounded")]
    public void Colour_edges_and_bounds()
    {
        var (photo, grey) = Taken();
        var colour = new Raster(1200, 900, 3, [.. grey.Pixels.SelectMany(p => new[] { p, (byte)(p / 2), (byte)9 })]);
        var made = Rectify.Of(photo, colour, new(-20, -20), new(20, 20)).Value;
        Assert.Equal(3, made.Raster.Channels);
        Assert.All(Enumerable.Range(0, 100), k => Assert.Equal(9, made.Raster.Pixels[3 * k + 2]));
        Assert.Equal(photo.Camera.PixelsPerMm(Vec2.Zero), made.PixelsPerMm, 9);
        var outside = Rectify.Of(photo, grey, new(2000, 2000), new(2010, 2010), 2).Value;
        Assert.All(outside.Raster.Pixels, p => Assert.Equal(255, p));
        var whole = Rectify.Of(photo, grey, new(-1500, -1500), new(1500, 1500)).Value;
        Assert.InRange((long)whole.Raster.Width * whole.Raster.Height, 1, 12_000_000);
        Assert.Contains("scale:", Rectify.Of(photo, grey, new(-90, -90), new(90, 90), 1000).Refusal!.Sentence, StringComparison.Ordinal);
        Assert.Contains("area:", Rectify.Of(photo, grey, new(9, 9), new(-9, 9)).Refusal!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    [Truth(Grade.Property, "progress runs to 1, and a stopped work stops")]
    public void It_tells_how_far_it_is_and_can_be_stopped()
    {
        var (photo, raster) = Taken();
        var told = new Told();
        Assert.True(Rectify.Of(photo, raster, new(-50, -50), new(50, 50), 4, told).Ok);
        Assert.Equal(1, told.Last);
        Assert.True(told.Count > 3);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => Rectify.Of(photo, raster, new(-50, -50), new(50, 50), 4, null, stop.Token));
    }

    sealed class Told : IProgress<double>
    {
        public double Last { get; private set; }

        public int Count { get; private set; }

        public void Report(double value) => (Last, Count) = (value, Count + 1);
    }
}
