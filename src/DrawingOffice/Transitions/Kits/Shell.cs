using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>
/// A strip with its thickness: both surfaces, the cut edges and, where it does not run once round, the seam edges; closed. Surfaces are set off along the mean direction of
/// the triangles at each point, so at creases the wall comes out a little thin: it is for looking at, not for measuring.
/// </summary>
static class Shell
{
    /// <param name="outward">From the strip to the outside surface, mm.</param>
    /// <param name="inward">To the inside surface, mm.</param>
    public static IEnumerable<Facet> Of(Strip strip, double outward, double inward)
    {
        var (normalA, normalB) = Normals(strip);
        var (outA, outB) = (Off(strip.First, normalA, outward), Off(strip.Second, normalB, outward));
        var (inA, inB) = (Off(strip.First, normalA, -inward), Off(strip.Second, normalB, -inward));
        for (var i = 0; i + 1 < strip.Rungs.Length; i++)
        {
            var ((a, b, _), (nextA, nextB, _)) = (strip.Rungs[i], strip.Rungs[i + 1]);
            if (nextA > a)
            {
                yield return Facet.Of(outA[a], outA[nextA], outB[b]);
                yield return Facet.Of(inA[a], inB[b], inA[nextA]);
                yield return Facet.Of(outA[a], inA[a], inA[nextA]);
                yield return Facet.Of(outA[a], inA[nextA], outA[nextA]);
            }
            else
            {
                yield return Facet.Of(outA[a], outB[nextB], outB[b]);
                yield return Facet.Of(inA[a], inB[b], inB[nextB]);
                yield return Facet.Of(outB[b], inB[nextB], inB[b]);
                yield return Facet.Of(outB[b], outB[nextB], inB[nextB]);
            }
        }
        if (Round(strip.First) && Round(strip.Second)) yield break;
        yield return Facet.Of(outA[0], outB[0], inB[0]);
        yield return Facet.Of(outA[0], inB[0], inA[0]);
        yield return Facet.Of(outA[^1], inB[^1], outB[^1]);
        yield return Facet.Of(outA[^1], inA[^1], inB[^1]);
    }

    static Vec3[] Off(ImmutableArray<Vec3> points, Vec3[] normals, double by) => [.. points.Select((p, i) => p + normals[i] * by)];

    static (Vec3[] First, Vec3[] Second) Normals(Strip strip)
    {
        var (first, second) = (new Vec3[strip.First.Length], new Vec3[strip.Second.Length]);
        for (var i = 0; i + 1 < strip.Rungs.Length; i++)
        {
            var ((a, b, _), (nextA, nextB, _)) = (strip.Rungs[i], strip.Rungs[i + 1]);
            var third = nextA > a ? strip.First[nextA] : strip.Second[nextB];
            var normal = (third - strip.First[a]).Cross(strip.Second[b] - strip.First[a]).Unit;
            first[a] += normal;
            second[b] += normal;
            if (nextA > a) first[nextA] += normal;
            else second[nextB] += normal;
        }
        // Once round, the ends of a closed strip are one place.
        Join(first, strip.First);
        Join(second, strip.Second);
        return ([.. first.Select(n => n.Unit)], [.. second.Select(n => n.Unit)]);
    }

    // A point is round too: all elements of a cone may end in it.
    static bool Round(ImmutableArray<Vec3> points) => points[0].DistanceTo(points[^1]) < Body.Same;

    static void Join(Vec3[] normals, ImmutableArray<Vec3> points)
    {
        if (points.Length > 1 && Round(points)) normals[0] = normals[^1] = normals[0] + normals[^1];
    }
}
