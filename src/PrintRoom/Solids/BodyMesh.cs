using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.PrintRoom.Solids;

/// <summary>
/// A body as triangles. Each facet is cut up by its own corners and those of its neighbours that lie on its sides, none added and none dropped,
/// so the mesh of a closed body is closed, and of flat facets its volume is the body's to rounding.
/// </summary>
public static class BodyMesh
{
    public static Mesh ToMesh(this Body body)
    {
        var welded = new Welder();
        var facets = body.Facets.Select(f => (f.Normal, Loops: f.Loops.Select(l => Numbered(l, welded)).Where(l => l.Count >= 3).ToList())).Where(f => f.Loops.Count > 0).ToList();
        Mend([.. facets.SelectMany(f => f.Loops)], welded);
        var triangles = ImmutableArray.CreateBuilder<Triangle>();
        foreach (var (normal, loops) in facets)
        {
            if (loops is [{ Count: 3 } single])
            {
                triangles.Add(new(single[0], single[1], single[2]));
                continue;
            }
            var (x, y) = Across(normal);
            // About one of its corners: a facet far from the origin loses no digits.
            var origin = welded[loops[0][0]];
            (int, Vec2)[] Flat(List<int> loop) => [.. loop.Select(i => (i, new Vec2((welded[i] - origin).Dot(x), (welded[i] - origin).Dot(y))))];
            foreach (var (a, b, c) in Ears.Of(Flat(loops[0]), [.. loops.Skip(1).Select(Flat)])) triangles.Add(new(a, b, c));
        }
        return new([.. welded.Points], triangles.ToImmutable());
    }

    /// <summary>mm³ (Gauss' theorem); right only for a closed mesh.</summary>
    public static double Volume(this Mesh mesh)
    {
        if (mesh.Points.IsEmpty) return 0;
        var origin = mesh.Points[0];
        return mesh.Triangles.Sum(t => (mesh.Points[t.A] - origin).Dot((mesh.Points[t.B] - origin).Cross(mesh.Points[t.C] - origin))) / 6;
    }

    /// <summary>Sides that do not meet just one other side running the other way; 0 for a closed surface.</summary>
    public static int OpenSides(this Mesh mesh)
    {
        var sides = mesh.Triangles.SelectMany(t => new[] { (t.A, t.B), (t.B, t.C), (t.C, t.A) }).CountBy(s => s).ToDictionary();
        return sides.Count(s => s.Value != 1 || sides.GetValueOrDefault((s.Key.Item2, s.Key.Item1)) != 1);
    }

    static List<int> Numbered(ImmutableArray<Vec3> loop, Welder welded)
    {
        var numbers = new List<int>(loop.Length);
        foreach (var p in loop)
            if (welded.Index(p) is var i && (numbers.Count == 0 || numbers[^1] != i)) numbers.Add(i);
        if (numbers.Count > 1 && numbers[0] == numbers[^1]) numbers.RemoveAt(numbers.Count - 1);
        return numbers;
    }

    /// <summary>Where a side meets no other, corners of other open sides that lie on it are taken in.</summary>
    static void Mend(List<List<int>> loops, Welder welded)
    {
        IEnumerable<(int, int)> Sides(List<int> loop) => loop.Select((a, i) => (a, loop[(i + 1) % loop.Count]));
        var all = loops.SelectMany(Sides).ToHashSet();
        var open = all.Where(s => !all.Contains((s.Item2, s.Item1))).ToHashSet();
        if (open.Count == 0) return;
        var corners = open.SelectMany(s => new[] { s.Item1, s.Item2 }).Distinct().ToList();
        foreach (var loop in loops)
        {
            var mended = new List<int>();
            foreach (var (a, b) in Sides(loop))
            {
                mended.Add(a);
                if (open.Contains((a, b))) mended.AddRange(corners.Where(c => c != a && c != b && Between(welded[a], welded[b], welded[c])).OrderBy(c => welded[a].DistanceTo(welded[c])));
            }
            if (mended.Count == loop.Count) continue;
            loop.Clear();
            loop.AddRange(mended);
        }
    }

    static bool Between(Vec3 a, Vec3 b, Vec3 p)
    {
        var along = b - a;
        var t = (p - a).Dot(along) / along.Dot(along);
        return t is > 0 and < 1 && (a + along * t).DistanceTo(p) <= Body.Same;
    }

    static (Vec3 X, Vec3 Y) Across(Vec3 normal)
    {
        var n = normal.Unit;
        var aside = Math.Abs(n.X) < 0.6 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0);
        var x = aside.Cross(n).Unit;
        return (x, n.Cross(x));
    }
}
