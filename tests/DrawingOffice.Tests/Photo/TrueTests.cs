using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Photo;

/// <summary>The camera found from pictures whose camera is known.</summary>
[Truth(Grade.SecondImplementation, "a renderer of its own in the tests: pinhole, radial lens, samples, blur, noise")]
public class TrueTests
{
    public static PhotoAsked Measured { get; } = new() { Print = PrintScale.Of(100, 100, 0.02).Value };

    static readonly Vec2[] s_inside = [.. from x in new[] { -70, -30, 10, 60 } from y in new[] { -100, -50, 0, 40, 110 } select new Vec2(x, y)];

    public static TheoryData<double, double, double> Views => new()
    {
        { 0, 0, 3 }, { 15, 40, 90 }, { 30, 200, 20 }, { 45, 100, 185 }, { 55, 270, 0 }, { 55, 10, 130 },
    };

    [Theory]
    [MemberData(nameof(Views))]
    public void The_target_is_found_and_places_come_true_within_their_plus_minus(double slant, double bearing, double roll)
    {
        var camera = Over(slant, bearing, roll);
        var light = Rendered.Clean(new Scene(Target.A4), camera);
        double sum = 0;
        var n = 0;
        for (ulong seed = 1; seed <= 3; seed++)
        {
            var photo = MakeTrue.Of(Rendered.Picture(light, camera.Width, camera.Height, 2, new Chance(seed)), Measured).Value;
            Assert.Equal(Target.A4, photo.Target);
            Assert.True(photo.Marks.Length >= 40, $"{photo.Marks.Length} squares");
            foreach (var p in s_inside)
            {
                var spot = photo.At(camera.Project(p), 0.01);
                var spread = spot.Spread + Spread.Round(-0 * 0.01);
                sum += Math.Pow((spot.At.X - p.X) / spread.StdX, 2) + Math.Pow((spot.At.Y - p.Y) / spread.StdY, 2);
                n += 2;
                Assert.InRange(spot.At.DistanceTo(p), 0, 0.08);
            }
        }
        TestContext.Current.SendDiagnosticMessage($"rms {Math.Sqrt(sum / n):0.00}");
        Assert.InRange(Math.Sqrt(sum / n), 0.1, 1.4);
    }

    internal static Pinhole Over(double slant, double bearing, double roll, double k1 = 0, int width = 2000, int height = 1500) =>
        new(width, height, 0.78 * width, slant, bearing, roll, slant > 40 ? 430 : 400, default, k1);
}
