using MathNet.Numerics.LinearAlgebra;
using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Edges;
using WitnessMark.DrawingOffice.Photo.Seeing;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Photo;

/// <summary>Homographies, lines, circles and steps of light against others' figures.</summary>
public class FitTests
{
    [Fact]
    [Truth(Grade.SecondImplementation, "figures printed in question 215463 of answers.opencv.org: four places, last two rows of the map, seen 2026-11-26")]
    public void Four_places_give_the_map_that_another_routine_printed()
    {
        Vec2[] from = [new(141, 131), new(480, 159), new(493, 630), new(64, 601)], to = [new(318, 256), new(534, 372), new(316, 670), new(73, 473)];
        var h = Homography.Of(from, to)!;
        double[] printed = [1.46491654e-01, 4.41418278e-01, 1.61369294e+02, -3.62463336e-04, -9.14274844e-05, 1];
        for (var k = 0; k < 6; k++) Assert.Equal(printed[k], h[3 + k], 2e-8 * Math.Max(1, Math.Abs(printed[k])));
        for (var k = 0; k < 4; k++) Assert.InRange(Homography.Map(h, from[k]).DistanceTo(to[k]), 0, 1e-7);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics singular value decomposition of the same scaled equations")]
    public void Many_noisy_places_give_the_singular_vector()
    {
        var chance = new Chance(11);
        for (var round = 0; round < 20; round++)
        {
            Vec2[] from = [.. Enumerable.Range(0, 12).Select(_ => new Vec2(chance.Uniform(-100, 100), chance.Uniform(-150, 150)))];
            Vec2[] to = [.. from.Select(p => new Vec2(900 + 5 * p.X - p.Y + 3 * chance.Normal(), 700 - 4 * p.Y + 3 * chance.Normal()) / (1 + 1e-3 * p.X - 5e-4 * p.Y))];
            var (a, b) = (Scaling(from), Scaling(to));
            var rows = Matrix<double>.Build.Dense(24, 9);
            for (var i = 0; i < 12; i++)
            {
                var (p, q) = ((from[i] - a.At) * a.Scale, (to[i] - b.At) * b.Scale);
                rows.SetRow(2 * i, [p.X, p.Y, 1, 0, 0, 0, -q.X * p.X, -q.X * p.Y, -q.X]);
                rows.SetRow(2 * i + 1, [0, 0, 0, p.X, p.Y, 1, -q.Y * p.X, -q.Y * p.Y, -q.Y]);
            }
            var least = rows.Svd().VT.Row(8);
            var middle = Matrix<double>.Build.DenseOfRowMajor(3, 3, least.ToArray());
            var after = Matrix<double>.Build.DenseOfRowMajor(3, 3, [1 / b.Scale, 0, b.At.X, 0, 1 / b.Scale, b.At.Y, 0, 0, 1]);
            var before = Matrix<double>.Build.DenseOfRowMajor(3, 3, [a.Scale, 0, -a.Scale * a.At.X, 0, a.Scale, -a.Scale * a.At.Y, 0, 0, 1]);
            var wanted = after * middle * before;
            wanted /= wanted[2, 2];
            var h = Homography.Of(from, to)!;
            for (var k = 0; k < 9; k++) Assert.Equal(wanted[k / 3, k % 3], h[k], 1e-9 * 1000);
        }
    }

    static (Vec2 At, double Scale) Scaling(Vec2[] places)
    {
        var at = new Vec2(places.Average(p => p.X), places.Average(p => p.Y));
        return (at, Math.Sqrt(2) / places.Average(p => (p - at).Length));
    }

    [Fact]
    [Truth(Grade.Property, "no map exists")]
    public void Places_on_a_line_or_too_few_give_no_map()
    {
        Vec2[] line = [.. Enumerable.Range(0, 6).Select(k => new Vec2(k, 2 * k))];
        Assert.Null(Homography.Of(line, line));
        Assert.Null(Homography.Of(line.AsSpan(0, 3), line.AsSpan(0, 3)));
    }

    [Fact]
    [Truth(Grade.FromMemory, "Gander, Golub and Strebel, BIT 34 (1994): six points, geometric circle (4.7398, 2.9835), radius 4.7142")]
    public void Six_points_of_1994_give_their_circle()
    {
        Vec2[] points = [new(1, 7), new(2, 6), new(5, 8), new(7, 7), new(9, 5), new(3, 7)];
        var (centre, radius) = Circles.Fit(points)!.Value;
        Assert.Equal(4.7398, centre.X, 5e-5);
        Assert.Equal(2.9835, centre.Y, 5e-5);
        Assert.Equal(4.7142, radius, 5e-5);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics Levenberg-Marquardt on the same distances")]
    public void Circles_through_rough_points_agree_with_another_minimiser()
    {
        var chance = new Chance(12);
        for (var round = 0; round < 20; round++)
        {
            var (sweep, r) = (chance.Uniform(1.5, 6.2), chance.Uniform(2, 60));
            Vec2[] points = [.. Enumerable.Range(0, 25).Select(k => new Vec2(7, -3) + Vec2.Polar(sweep * k / 24, r + 0.02 * chance.Normal()))];
            var (centre, radius) = Circles.Fit(points)!.Value;
            var at = Vector<double>.Build.Dense(points.Length, i => i);
            var zero = Vector<double>.Build.Dense(points.Length);
            var model = MathNet.Numerics.Optimization.ObjectiveFunction.NonlinearModel(
                (p, _) => Vector<double>.Build.Dense(points.Length, i => points[i].DistanceTo(new(p[0], p[1])) - p[2]), at, zero, null!, 6);
            var other = new MathNet.Numerics.Optimization.LevenbergMarquardtMinimizer(gradientTolerance: 1e-14, stepTolerance: 1e-14, functionTolerance: 1e-16)
                .FindMinimum(model, Vector<double>.Build.Dense([7.1, -3.1, r + 0.1])).MinimizingPoint;
            Assert.Equal(other[0], centre.X, 2e-6);
            Assert.Equal(other[1], centre.Y, 2e-6);
            Assert.Equal(other[2], radius, 2e-6);
        }
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics singular value decomposition of the centred points")]
    public void Lines_agree_with_the_principal_direction()
    {
        var chance = new Chance(13);
        for (var round = 0; round < 20; round++)
        {
            var way = Vec2.Polar(chance.Uniform(-3, 3));
            Vec2[] points = [.. Enumerable.Range(0, 30).Select(k => new Vec2(40, 7) + way * k + way.Left * (0.05 * chance.Normal()))];
            var (middle, along, _, std) = Lines.Plain(points);
            var rows = Matrix<double>.Build.Dense(30, 2, (i, k) => k == 0 ? points[i].X - points.Average(p => p.X) : points[i].Y - points.Average(p => p.Y));
            var svd = rows.Svd();
            Assert.Equal(1, Math.Abs(along.X * svd.VT[0, 0] + along.Y * svd.VT[0, 1]), 12);
            Assert.Equal(svd.S[1] / Math.Sqrt(28), std, 12);
            Assert.Equal(points.Average(p => p.X), middle.X, 10);
        }
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics error function")]
    public void The_quick_normal_distribution_holds_its_stated_error()
    {
        for (var z = -6.0; z <= 6; z += 0.01) Assert.Equal(MathNet.Numerics.Distributions.Normal.CDF(0, 1, z), Bell.Below(z), 1e-7);
    }

    [Fact]
    [Truth(Grade.Property, "a step drawn at a known place, pixels averaged over 64 strips")]
    public void A_blurred_step_is_found_where_it_was_drawn()
    {
        double sum = 0, most = 0;
        for (var k = 0; k < 40; k++)
        {
            var (at, slope) = (20 + k / 40.0, 0.13);
            var pixels = new byte[40 * 40];
            for (var j = 0; j < 40; j++)
                for (var i = 0; i < 40; i++)
                {
                    double light = 0;
                    for (var n = 0; n < 64; n++) light += 0.1 + 0.6 * MathNet.Numerics.Distributions.Normal.CDF(0, 0.8, i + (n + 0.5) / 64 - at - slope * (j - 19.5)) ;
                    light /= 64;
                    pixels[j * 40 + i] = (byte)Math.Round(255 * (1.055 * Math.Pow(light, 1 / 2.4) - 0.055));
                }
            var met = EdgeProfile.Fit(Light.Of(new(40, 40, 1, pixels)), new(20.5, 20), new(1, 0), 6, 0.05)!.Value;
            var off = 20.5 + met.Offset - at;
            (sum, most) = (sum + off, Math.Max(most, Math.Abs(off)));
            Assert.True(met.Step > 0);
        }
        Assert.InRange(most, 0, 0.03);
        Assert.InRange(Math.Abs(sum / 40), 0, 0.01);
    }

    [Fact]
    [Truth(Grade.Property, "even ground has no edge")]
    public void Even_ground_has_no_edge() =>
        Assert.Null(EdgeProfile.Fit(Light.Of(new(40, 40, 1, Enumerable.Repeat((byte)120, 1600).ToArray())), new(20, 20), new(1, 0), 6, 0.02));
}
