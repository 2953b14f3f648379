using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Rails.Flattening;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Solids;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

public class FlatteningTests
{
    /// <summary>A surface over a rectangle by u × v fields, and a start that is wrong by a shear and a bow.</summary>
    static (Mesh Mesh, Vec2[] Start) Grid(double width, double height, int u, int v, Func<double, double, Vec3> at)
    {
        var places = from j in Enumerable.Range(0, v + 1) from i in Enumerable.Range(0, u + 1) select new Vec2(width * i / u, height * j / v);
        var triangles = ImmutableArray.CreateBuilder<Triangle>();
        for (var j = 0; j < v; j++)
            for (var i = 0; i < u; i++)
            {
                var (a, b, c, d) = (j * (u + 1) + i, j * (u + 1) + i + 1, (j + 1) * (u + 1) + i + 1, (j + 1) * (u + 1) + i);
                triangles.AddRange(new Triangle(a, b, c), new Triangle(a, c, d));
            }
        var list = places.ToList();
        return (new([.. list.Select(p => at(p.X, p.Y))], triangles.ToImmutable()), [.. list.Select(p => new Vec2(1.05 * p.X + 0.1 * p.Y, p.Y + 0.002 * p.X * (width - p.X)))]);
    }

    static double WorstSide(Mesh mesh, ImmutableArray<Vec2> flat) => mesh.Triangles
        .SelectMany(t => new[] { (t.A, t.B), (t.B, t.C), (t.C, t.A) })
        .Max(s => Math.Abs(mesh.Points[s.Item1].DistanceTo(mesh.Points[s.Item2]) - flat[s.Item1].DistanceTo(flat[s.Item2])));

    [Fact]
    [Truth(Grade.Property, "a cylinder is developable: its facets lie flat without any strain")]
    public void A_cylinder_lies_flat_as_the_rectangle_it_was_rolled_from()
    {
        var (mesh, start) = Grid(120, 60, 24, 8, (x, y) => new(80 * Math.Sin(x / 80), y, 80 * Math.Cos(x / 80)));
        var flat = Flatten.Run(mesh, start);
        Assert.True(flat.Settled);
        Assert.True(WorstSide(mesh, flat.Points) < 1e-4);
        Assert.InRange(Math.Max(flat.Stretch, -flat.Shrink), 0, 1e-5);
        Assert.Equal(0, flat.AreaChange, 6);
    }

    [Fact]
    [Truth(Grade.Property, "a cone is developable: distances from its apex are kept")]
    public void A_cone_lies_flat_with_all_its_sides_true()
    {
        var (mesh, places) = Grid(1.2, 60, 24, 8, (a, y) => (100 + y) * new Vec3(0.6 * Math.Sin(a / 0.6), 0.6 * Math.Cos(a / 0.6), 0.8));
        // A fan of the right sense, a tenth too narrow.
        var fan = mesh.Points.Select((p, i) => Vec2.Polar(Math.PI / 2 - 1.1 * 1.2 * (i % 25) / 24, p.Length)).ToArray();
        Assert.Equal(places.Length, fan.Length);
        var flat = Flatten.Run(mesh, fan);
        Assert.True(flat.Settled);
        Assert.True(WorstSide(mesh, flat.Points) < 1e-3);
    }

    [Fact]
    [Truth(Grade.Property, "Gauss: a sphere of radius R has curvature 1/R² and no isometry; the strain of a cap of width b is about (b/R)²/24 to (b/R)²/8")]
    public void A_cap_of_a_sphere_keeps_a_strain_of_the_size_that_its_curvature_asks_for()
    {
        const double r = 200;
        double Worst(double b)
        {
            var (mesh, start) = Grid(b, b, 16, 16, (x, y) => new(x - b / 2, y - b / 2, Math.Sqrt(r * r - (x - b / 2) * (x - b / 2) - (y - b / 2) * (y - b / 2))));
            var flat = Flatten.Run(mesh, start);
            return Math.Max(flat.Stretch, -flat.Shrink);
        }
        var (small, large) = (Worst(20), Worst(40));
        Assert.InRange(small, 0.01 / 48, 0.01 / 2);
        // Four times for twice the width.
        Assert.InRange(large / small, 3.6, 4.5);
    }
}
