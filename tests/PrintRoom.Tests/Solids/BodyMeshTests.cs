using System.Collections.Immutable;
using System.Text.Json;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.PrintRoom.Solids;
using WitnessMark.PrintRoom.Tests.Pictorial;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests.Solids;

public class BodyMeshTests
{
    static void Whole(Body body)
    {
        var mesh = body.ToMesh();
        Assert.Equal(0, mesh.OpenSides());
        Assert.Equal(1, mesh.Volume() / body.Volume, 1e-9);
        Assert.Equal(body.Surface, mesh.Triangles.Sum(t => Area(mesh, t)), 1e-9 * body.Surface);
    }

    static double Area(Mesh mesh, Triangle t)
    {
        var (a, b, c) = mesh.Corners(t);
        return (b - a).Cross(c - a).Length / 2;
    }

    /// <summary>A plate of any outline with openings, with all its walls.</summary>
    static Body Plate(double thickness, params List<Vec2>[] loops)
    {
        var facets = new List<Facet>
        {
            new([.. loops.Select(l => (ImmutableArray<Vec3>)[.. l.Select(p => new Vec3(p.X, p.Y, thickness))])]),
            new([.. loops.Select(l => (ImmutableArray<Vec3>)[.. Enumerable.Reverse(l).Select(p => new Vec3(p.X, p.Y, 0))])]),
        };
        foreach (var l in loops)
            for (var i = 0; i < l.Count; i++)
            {
                var (a, b) = (l[i], l[(i + 1) % l.Count]);
                facets.Add(Facet.Of(new(a.X, a.Y, 0), new(b.X, b.Y, 0), new(b.X, b.Y, thickness), new(a.X, a.Y, thickness)));
            }
        return new([.. facets], []);
    }

    [Fact]
    [Truth(Grade.Property, "a closed surface: each side in two triangles, and Gauss' volume kept")]
    public void A_drilled_plate_is_closed_and_keeps_its_volume() => Whole(Blocks.Drilled(60, 3, 12));

    [Fact]
    [Truth(Grade.Property, "a closed surface keeps Gauss' volume under any cutting into triangles")]
    public void A_web_with_forty_holes_is_closed() => Whole(Plate(2,
    [
        [new(0, 0), new(2000, 0), new(2000, 120), new(0, 120)],
        .. Enumerable.Range(0, 40).Select(h => Enumerable.Range(0, 24).Select(k => new Vec2(30 + 49 * h, 60 + 30 * Math.Sin(h)) + Vec2.Polar(-k * Math.PI / 12, 6)).ToList()),
    ]));

    [Fact]
    [Truth(Grade.Property, "a closed surface keeps Gauss' volume under any cutting into triangles")]
    public void Any_star_with_an_opening_is_closed()
    {
        var chance = new Chance(20261126);
        for (var trial = 0; trial < 60; trial++)
        {
            var n = 5 + trial;
            var star = Enumerable.Range(0, n).Select(k => Vec2.Polar(2 * Math.PI * k / n, 20 + 60 * chance.Uniform())).ToList();
            // Corners that lie straight between their neighbours belong to the shape too.
            var fine = star.SelectMany((p, i) => new[] { p, (p + star[(i + 1) % n]) / 2 }).ToList();
            Whole(Plate(1.5, fine, [.. Enumerable.Range(0, 6).Select(k => Vec2.Polar(-k * Math.PI / 3, 12))]));
        }
    }

    [Fact]
    [Truth(Grade.Property, "two blocks set on one another: 10·10·10 + 4·4·4")]
    public void A_neighbours_corner_on_a_side_is_taken_in()
    {
        // The top of the lower block is given whole with an opening, the walls of the upper one are each split in two.
        Vec3[] foot = [new(3, 3, 10), new(7, 3, 10), new(7, 7, 10), new(3, 7, 10)];
        var facets = Blocks.Box(Vec3.Zero, 10, 10, 10).Skip(1).ToList();
        facets.Add(new([[new(0, 0, 10), new(10, 0, 10), new(10, 10, 10), new(0, 10, 10)], [.. foot.Reverse()]]));
        var up = new Vec3(0, 0, 4);
        facets.Add(Facet.Of(foot[0] + up, foot[1] + up, foot[2] + up, foot[3] + up));
        for (var k = 0; k < 4; k++)
        {
            var (a, b) = (foot[k], foot[(k + 1) % 4]);
            var m = (a + b) / 2;
            facets.Add(Facet.Of(a, m, m + up, a + up));
            facets.Add(Facet.Of(m, b, b + up, m + up));
        }
        var mesh = new Body([.. facets], []).ToMesh();
        Assert.Equal(0, mesh.OpenSides());
        Assert.Equal(1064, mesh.Volume(), 1e-9);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "npm parse-stl 1.0.2")]
    public void Its_file_holds_the_same_volume()
    {
        var body = Blocks.Drilled(60, 3, 12);
        var read = Outside.Stl(Stl.Binary(body.ToMesh(), "plate"));
        Vec3 At(JsonElement point) => new(point[0].GetDouble(), point[1].GetDouble(), point[2].GetDouble());
        var points = read.GetProperty("positions").EnumerateArray().Select(At).ToList();
        var volume = read.GetProperty("cells").EnumerateArray().Select(c => c.EnumerateArray().Select(i => points[i.GetInt32()]).ToArray()).Sum(c => c[0].Dot(c[1].Cross(c[2])) / 6);
        Assert.Equal(body.Volume, volume, 1e-4 * body.Volume);
    }
}
