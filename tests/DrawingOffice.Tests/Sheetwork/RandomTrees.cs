using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

/// <summary>Sound face trees of any shape: straight and rounded sides, bends up and down, holes, part bends and wide flanges.</summary>
static class RandomTrees
{
    public static FaceTree Make(ulong seed, int mostFaces = 9)
    {
        var chance = new Chance(seed);
        var thickness = chance.Uniform(0.5, 3);
        var faces = new List<Face> { Root(chance) };
        var bends = new List<Bend>();
        // Sides still free, by face and side.
        var free = Sides(0, faces[0], skip: -1).ToList();
        var wanted = 1 + chance.Below(mostFaces);
        while (faces.Count < wanted && free.Count > 0)
        {
            var pick = chance.Below(free.Count);
            var (parent, side) = free[pick];
            free.RemoveAt(pick);
            var (a, b) = (faces[parent].Outline.Start(side), faces[parent].Outline.End(side));
            var length = a.DistanceTo(b);
            if (length < 8) continue;
            var whole = chance.Below(2) == 0;
            var (start, end) = whole ? (0.0, 1.0) : (chance.Uniform(0, 0.3), chance.Uniform(0.6, 1));
            var id = $"f{faces.Count}";
            var (from, to) = (whole ? a : a + (b - a) * start, whole ? b : a + (b - a) * end);
            var angle = chance.Uniform(0.05, Math.PI) * (chance.Below(2) == 0 ? 1 : -1);
            bends.Add(new(faces[parent].Id, from, to, id, angle, chance.Uniform(0.65, 4) * thickness));
            faces.Add(Flange(chance, id, from.DistanceTo(to)));
            free.AddRange(Sides(faces.Count - 1, faces[^1], skip: 0));
        }
        return FaceTree.Create("random", thickness, faces, bends).Value;
    }

    static IEnumerable<(int, int)> Sides(int face, Face f, int skip)
    {
        for (var i = 0; i < f.Outline.Count; i++)
            if (i != skip && f.Outline.Straight(i)) yield return (face, i);
    }

    static Face Root(Chance chance)
    {
        var n = 3 + chance.Below(5);
        var points = Enumerable.Range(0, n).Select(i => Vec2.Polar(2 * Math.PI * (i + chance.Uniform(0, 0.2)) / n, chance.Uniform(30, 80)) + new Vec2(100, -50));
        return new("root", Loop.Of([.. points]), [new RoundHole("h0", new(100, -50), 5)]);
    }

    // Bottom on the x axis, sometimes wider than the bend; sometimes an arc for a top.
    static Face Flange(Chance chance, string id, double width)
    {
        var (left, right) = (chance.Below(3) == 0 ? 6 : 0, chance.Below(3) == 0 ? 6 : 0);
        var (low, high) = (chance.Uniform(12, 30), chance.Uniform(35, 60));
        var bulge = chance.Below(2) == 0 ? 0 : chance.Uniform(0.05, 0.6);
        return new(id, new([new(new(-left, 0)), new(new(width + right, 0)), new(new(width, low)), new(new(0.7 * width, high), bulge), new(new(0, low + 2))]),
            width < 10 ? [] : [new Slot($"s{id}", new(width / 2, low / 2), 2, 3 + width / 8, chance.Uniform(0, 0.3))]);
    }
}
