using System.Text;
using System.Text.Json;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Solids;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests.Solids;

[Truth(Grade.SecondImplementation, "npm parse-stl 1.0.2")]
public class StlTests
{
    /// <summary>A corner cut off a 10 × 20 × 30 block: volume 10·20·30/6.</summary>
    static readonly Mesh s_corner = new(
        [new(0, 0, 0), new(10, 0, 0), new(0, 20, 0), new(0, 0, 30)],
        [new(0, 2, 1), new(0, 1, 3), new(0, 3, 2), new(1, 2, 3)]);

    [Fact]
    public void Binary_comes_back_whole() => Check(Outside.Stl(Stl.Binary(s_corner, "solid corner")));

    [Fact]
    public void Ascii_comes_back_whole() => Check(Outside.Stl(Encoding.ASCII.GetBytes(Stl.Ascii(s_corner, "corner é"))));

    static void Check(JsonElement read)
    {
        Vec3 At(JsonElement point) => new(point[0].GetDouble(), point[1].GetDouble(), point[2].GetDouble());
        var points = read.GetProperty("positions").EnumerateArray().Select(At).ToList();
        var cells = read.GetProperty("cells").EnumerateArray().Select(c => c.EnumerateArray().Select(i => points[i.GetInt32()]).ToArray()).ToList();
        var normals = read.GetProperty("faceNormals").EnumerateArray().Select(At).ToList();
        Assert.Equal(4, cells.Count);
        Assert.Equal(1000, cells.Sum(c => c[0].Dot(c[1].Cross(c[2])) / 6), 1e-3);
        Assert.Equal([new(0, 0, -1), new(0, -1, 0), new(-1, 0, 0)], normals[..3]);
        Assert.Equal(1, normals[3].Dot(new Vec3(6, 3, 2).Unit), 1e-6);
    }

    [Fact]
    public void A_triangle_without_its_corner_is_refused()
    {
        Assert.Contains("triangle 1", Assert.Throws<RefusedException>(() => Stl.Binary(s_corner with { Triangles = [new(0, 1, 4)] }, "x")).Message);
        Assert.Contains("corner 1", Assert.Throws<RefusedException>(() => Stl.Ascii(s_corner with { Points = [new(double.NaN, 0, 0)] }, "x")).Message);
    }
}
