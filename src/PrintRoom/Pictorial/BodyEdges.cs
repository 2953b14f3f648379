using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Pictorial;

/// <summary>An edge of a body between one or two facets; <paramref name="Second"/> is −1 on an open border.</summary>
/// <param name="Rim">The circle it is a chord of, or −1.</param>
readonly record struct BodyEdge(Vec3 A, Vec3 B, int First, int Second, int Rim);

/// <summary>Finds the edges of a body by the corners its facets share.</summary>
static class BodyEdges
{
    public static ImmutableArray<BodyEdge> Of(Body body)
    {
        var welded = new Welder();
        var sides = new Dictionary<(int, int), (int First, int Second)>();
        for (var f = 0; f < body.Facets.Length; f++)
        {
            foreach (var loop in body.Facets[f].Loops)
                for (int i = 0, j = loop.Length - 1; i < loop.Length; j = i++)
                {
                    var (a, b) = (welded.Index(loop[j]), welded.Index(loop[i]));
                    if (a == b) continue;
                    var key = a < b ? (a, b) : (b, a);
                    sides[key] = sides.TryGetValue(key, out var known) ? (known.First, f) : (f, -1);
                }
        }
        return [.. sides.Select(s => new BodyEdge(welded[s.Key.Item1], welded[s.Key.Item2], s.Value.First, s.Value.Second, RimOf(body, welded[s.Key.Item1], welded[s.Key.Item2])))];
    }

    static int RimOf(Body body, Vec3 a, Vec3 b)
    {
        for (var i = 0; i < body.Rims.Length; i++)
            if (On(body.Rims[i], a) && On(body.Rims[i], b)) return i;
        return -1;
    }

    static bool On(Rim rim, Vec3 p)
    {
        var d = p - rim.Centre;
        return Math.Abs(d.Dot(rim.Normal)) <= Body.Same && Math.Abs(d.Length - rim.Radius) <= Body.Same;
    }
}
