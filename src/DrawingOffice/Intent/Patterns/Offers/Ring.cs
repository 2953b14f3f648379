using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>Marks round a centre: a feature of its own, or the mean of the marks.</summary>
/// <param name="Centre">−1 where the marks have no feature in the middle; they must then stand in equal steps all round.</param>
/// <param name="Members">In the order of their bearing.</param>
/// <param name="Steps">Equal steps that the whole turn is divided into; 0 where the bearings keep to none.</param>
/// <param name="Slots">Step on which each member stands, the first on 0.</param>
sealed record Ring(Shape Shape, int Centre, ImmutableArray<int> Members, int Steps, ImmutableArray<int> Slots)
{
    public Vec2 Middle(double[] x)
    {
        if (Centre >= 0) return Shape.At(Centre, x);
        var sum = Vec2.Zero;
        foreach (var m in Members) sum += Shape.At(m, x);
        return sum / Members.Length;
    }

    ImmutableArray<int> Touched(params ReadOnlySpan<int> members) => Centre >= 0 ? [Centre, .. members] : Members;

    public double Radius(int member, double[] x) => Shape.At(member, x).DistanceTo(Middle(x));

    /// <summary>All at one distance from the middle, and on their steps where there are any.</summary>
    public IEnumerable<Tie> Conditions()
    {
        var (first, range) = (Members[0], Math.Log(Shape.Extent / 2));
        for (var i = 1; i < Members.Length; i++)
        {
            var member = Members[i];
            yield return new(Touched(first, member), range, x => Radius(member, x) - Radius(first, x));
        }
        if (Steps == 0) yield break;
        for (var i = 1; i < Members.Length; i++)
        {
            var (member, angle, arm) = (Members[i], 2 * Math.PI * Slots[i] / Steps, Radius(first, Shape.Start));
            // Times the radius, so that it is the way along the circle, mm.
            yield return new(Touched(first, member), range, x =>
            {
                var middle = Middle(x);
                return arm * Math.IEEERemainder((Shape.At(member, x) - middle).Angle - (Shape.At(first, x) - middle).Angle - angle, 2 * Math.PI);
            });
        }
    }

    /// <summary>Diameter of the circle is a listed one.</summary>
    public Tie Diameter(double value, double logStretch)
    {
        var first = Members[0];
        return new(Touched(first), logStretch, x => 2 * Radius(first, x) - value);
    }
}
