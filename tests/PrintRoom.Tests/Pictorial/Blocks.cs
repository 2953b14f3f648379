using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.PrintRoom.Tests.Pictorial;

static class Blocks
{
    /// <summary>A box with its low corner at a point, as facets seen from outside anticlockwise.</summary>
    public static IEnumerable<Facet> Box(Vec3 low, double a, double b, double c)
    {
        Vec3 P(int x, int y, int z) => low + new Vec3(x * a, y * b, z * c);
        yield return Facet.Of(P(0, 0, 1), P(1, 0, 1), P(1, 1, 1), P(0, 1, 1));
        yield return Facet.Of(P(0, 1, 0), P(1, 1, 0), P(1, 0, 0), P(0, 0, 0));
        yield return Facet.Of(P(0, 0, 0), P(1, 0, 0), P(1, 0, 1), P(0, 0, 1));
        yield return Facet.Of(P(1, 0, 0), P(1, 1, 0), P(1, 1, 1), P(1, 0, 1));
        yield return Facet.Of(P(1, 1, 0), P(0, 1, 0), P(0, 1, 1), P(1, 1, 1));
        yield return Facet.Of(P(0, 1, 0), P(0, 0, 0), P(0, 0, 1), P(0, 1, 1));
    }

    /// <summary>A plate with a round hole along z, chords for the hole, the true circles as rims.</summary>
    public static Body Drilled(double side, double thickness, double radius, int chords = 48)
    {
        Vec3 Square(int k, double z) => new(k is 1 or 2 ? side : 0, k is 2 or 3 ? side : 0, z);
        Vec3 Round(int k, double z) => new(side / 2 + radius * Math.Cos(2 * Math.PI * k / chords), side / 2 + radius * Math.Sin(2 * Math.PI * k / chords), z);
        var facets = new List<Facet>();
        var hole = Enumerable.Range(0, chords);
        facets.Add(new([[.. Enumerable.Range(0, 4).Select(k => Square(k, thickness))], [.. hole.Reverse().Select(k => Round(k, thickness))]]));
        facets.Add(new([[.. Enumerable.Range(0, 4).Reverse().Select(k => Square(k, 0))], [.. hole.Select(k => Round(k, 0))]]));
        for (var k = 0; k < 4; k++) facets.Add(Facet.Of(Square(k, 0), Square((k + 1) % 4, 0), Square((k + 1) % 4, thickness), Square(k, thickness)));
        for (var k = 0; k < chords; k++) facets.Add(Facet.Of(Round((k + 1) % chords, 0), Round(k, 0), Round(k, thickness), Round((k + 1) % chords, thickness)));
        var up = new Vec3(0, 0, 1);
        return new([.. facets], [new(new(side / 2, side / 2, 0), up, radius), new(new(side / 2, side / 2, thickness), up, radius)]);
    }
}
