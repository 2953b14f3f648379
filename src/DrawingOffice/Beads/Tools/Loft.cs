using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>Bodies from cross-sections: one after another along a line, or one turned about an axis. All polygons of a body have equally many corners.</summary>
static class Loft
{
    /// <summary>Along y; a cross-section lies in x and z, anticlockwise seen with z up and x to the right.</summary>
    public static Body Along(ImmutableArray<(double Y, ImmutableArray<Vec2> Section)> stations)
    {
        var facets = ImmutableArray.CreateBuilder<Facet>();
        facets.Add(new([[.. stations[0].Section.Select(p => At(p, stations[0].Y))]]));
        for (var k = 1; k < stations.Length; k++)
        {
            var ((y0, here), (y1, next)) = (stations[k - 1], stations[k]);
            for (var i = 0; i < here.Length; i++)
            {
                var j = (i + 1) % here.Length;
                Patch(facets, At(here[i], y0), At(next[i], y1), At(next[j], y1), At(here[j], y0));
            }
        }
        facets.Add(new([[.. stations[^1].Section.Reverse().Select(p => At(p, stations[^1].Y))]]));
        return new(facets.ToImmutable(), []);
    }

    /// <summary>About the z axis; the cross-section lies in radius and z, anticlockwise with the radius to the right, off the axis or with one side on it.</summary>
    public static Body Turned(ImmutableArray<Vec2> section, int steps)
    {
        var facets = ImmutableArray.CreateBuilder<Facet>();
        for (var k = 0; k < steps; k++)
        {
            var (here, next) = (2 * Math.PI * k / steps, 2 * Math.PI * ((k + 1) % steps) / steps);
            for (var i = 0; i < section.Length; i++)
            {
                var (a, b) = (section[i], section[(i + 1) % section.Length]);
                if (a.X <= 0 && b.X <= 0) continue;
                Vec3 Round(Vec2 p, double turn) => new(p.X * Math.Cos(turn), p.X * Math.Sin(turn), p.Y);
                Patch(facets, Round(a, here), Round(a, next), Round(b, next), Round(b, here));
            }
        }
        return new(facets.ToImmutable(), []);
    }

    static Vec3 At(Vec2 p, double y) => new(p.X, y, p.Y);

    /// <summary>Four corners anticlockwise from outside; flat where they can be, two triangles where not, three corners where two fall together.</summary>
    static void Patch(ImmutableArray<Facet>.Builder facets, Vec3 a, Vec3 b, Vec3 c, Vec3 d)
    {
        if (a.DistanceTo(b) <= Body.Same) facets.Add(Facet.Of(a, c, d));
        else if (c.DistanceTo(d) <= Body.Same) facets.Add(Facet.Of(a, b, c));
        else if (Math.Abs((b - a).Cross(c - a).Unit.Dot(d - a)) <= Body.Same) facets.Add(Facet.Of(a, b, c, d));
        else
        {
            facets.Add(Facet.Of(a, b, c));
            facets.Add(Facet.Of(a, c, d));
        }
    }
}
