using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Pictorial;

/// <summary>
/// One flat piece of a body's surface: its outline anticlockwise seen from outside, then its openings the other way round.
/// Corners shared with neighbours must be shared exactly (to <see cref="Body.Same"/>).
/// </summary>
public sealed record Facet(ImmutableArray<ImmutableArray<Vec3>> Loops)
{
    public static Facet Of(params ReadOnlySpan<Vec3> outline) => new([outline.ToImmutableArray()]);

    /// <summary>Square to the facet, outwards, length twice its area, mm² (Newell's sum, openings taken off).</summary>
    public Vec3 Normal
    {
        get
        {
            var sum = Vec3.Zero;
            var origin = Loops[0][0];
            foreach (var loop in Loops)
                for (int i = 0, j = loop.Length - 1; i < loop.Length; j = i++) sum += (loop[j] - origin).Cross(loop[i] - origin);
            return sum;
        }
    }
}

/// <summary>A true circle on a body that its facets follow by chords; drawn as an ellipse where it is seen whole.</summary>
/// <param name="Normal">Square to its plane, length 1.</param>
public readonly record struct Rim(Vec3 Centre, Vec3 Normal, double Radius);

/// <summary>A closed body bounded by flat facets, mm.</summary>
public sealed record Body(ImmutableArray<Facet> Facets, ImmutableArray<Rim> Rims)
{
    /// <summary>Corners nearer than this are one, mm: over the rounding of a folded chain, under anything drawn.</summary>
    public const double Same = 1e-6;

    /// <summary>mm³ (Gauss' theorem); right only for a closed body.</summary>
    public double Volume => Facets.Sum(f => f.Loops[0][0].Dot(f.Normal)) / 6;

    /// <summary>mm².</summary>
    public double Surface => Facets.Sum(f => f.Normal.Length) / 2;
}
