using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>A pin that stands out of one side of a prism.</summary>
/// <param name="Side">Of the profile, by index.</param>
/// <param name="Along">From that side's first corner, mm.</param>
/// <param name="At">Along the prism, mm.</param>
/// <param name="Radius">mm.</param>
/// <param name="Height">How far it stands out, mm.</param>
readonly record struct StandingPin(int Side, double Along, double At, double Radius, double Height);

/// <summary>A flat profile carried straight, closed, with pins on its sides.</summary>
static class Prism
{
    /// <summary>Chords follow arcs this near, mm: finer than a printed former.</summary>
    const double ChordError = 0.02;

    /// <param name="profile">Anticlockwise, mm.</param>
    public static Body Of(Loop profile, double length, params ReadOnlySpan<StandingPin> pins)
    {
        var points = profile.Flatten(ChordError);
        var facets = ImmutableArray.CreateBuilder<Facet>();
        facets.Add(new([[.. points.Select(p => Raise(p, length))]]));
        facets.Add(new([[.. points.Reverse().Select(p => Raise(p, 0))]]));
        for (var k = 0; k < points.Length; k++)
        {
            var (a, b) = (points[k], points[(k + 1) % points.Length]);
            var loops = ImmutableArray.CreateBuilder<ImmutableArray<Vec3>>();
            loops.Add([Raise(a, 0), Raise(b, 0), Raise(b, length), Raise(a, length)]);
            foreach (var pin in pins)
                if (profile.Straight(pin.Side) && a == profile.Start(pin.Side)) loops.Add(Stand(facets, pin, a, (b - a).Unit));
            facets.Add(new(loops.ToImmutable()));
        }
        return new(facets.ToImmutable(), []);
    }

    static Vec3 Raise(Vec2 p, double z) => new(p.X, p.Y, z);

    /// <returns>The ring where the pin leaves the side, as an opening of it.</returns>
    static ImmutableArray<Vec3> Stand(ImmutableArray<Facet>.Builder facets, StandingPin pin, Vec2 from, Vec2 along)
    {
        var ring = Loop.Circle(new(pin.Along, pin.At), pin.Radius).Flatten(ChordError);
        Vec3 Place(Vec2 q, double height) => Raise(from + along * q.X - along.Left * height, q.Y);
        for (var k = 0; k < ring.Length; k++)
        {
            var (p, q) = (ring[k], ring[(k + 1) % ring.Length]);
            facets.Add(Facet.Of(Place(p, 0), Place(q, 0), Place(q, pin.Height), Place(p, pin.Height)));
        }
        facets.Add(new([[.. ring.Select(q => Place(q, pin.Height))]]));
        return [.. ring.Reverse().Select(q => Place(q, 0))];
    }
}
