using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>Tubes as closed bodies: rings of points in order along the tube, walls between them, a ring of metal at each end.</summary>
static class Tubing
{
    /// <summary>Flats round a tube in a picture.</summary>
    public const int Round = 48;

    /// <param name="outer">Rings on the outside from the first end to the last, each anticlockwise seen from the last end.</param>
    /// <param name="inner">The same on the bore.</param>
    public static IEnumerable<Facet> Of(Vec3[][] outer, Vec3[][] inner)
    {
        for (var j = 0; j + 1 < outer.Length; j++)
            for (var k = 0; k < Round; k++)
            {
                var m = (k + 1) % Round;
                yield return Facet.Of(outer[j][k], outer[j][m], outer[j + 1][m]);
                yield return Facet.Of(outer[j][k], outer[j + 1][m], outer[j + 1][k]);
                yield return Facet.Of(inner[j][k], inner[j + 1][m], inner[j][m]);
                yield return Facet.Of(inner[j][k], inner[j + 1][k], inner[j + 1][m]);
            }
        for (var k = 0; k < Round; k++)
        {
            var m = (k + 1) % Round;
            yield return Facet.Of(outer[0][k], inner[0][k], inner[0][m]);
            yield return Facet.Of(outer[0][k], inner[0][m], outer[0][m]);
            yield return Facet.Of(outer[^1][k], inner[^1][m], inner[^1][k]);
            yield return Facet.Of(outer[^1][k], outer[^1][m], inner[^1][m]);
        }
    }

    public static Vec3[] Ring(Func<double, Vec3> at) => [.. Enumerable.Range(0, Round).Select(k => at(Math.Tau * k / Round))];
}
