using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>Pitch circles: marks at one distance from a centre, in equal steps of angle or not.</summary>
static class Rings
{
    /// <summary>mm by which a mark may miss its place on a circle and still be weighed.</summary>
    const double Near = 0.7;

    /// <summary>Steps round a circle that are worth trying.</summary>
    const int MostSteps = 12;

    public static string About(Ring ring) => ring.Centre < 0 ? "their middle" : ring.Shape.Id(ring.Centre);

    /// <summary>Strong enough to be looked for before rows: equal steps round a feature, or a whole polygon of five or more without one.</summary>
    public static IEnumerable<Hypothesis> Stepped(Shape shape, double[] x) =>
        Centred(shape, x).Where(r => r.Steps > 0 && r.Steps != 4 && r.Members.Length >= 3).Concat(Polygons(shape, x)).Select(Offered);

    /// <summary>The rest: squares and uneven bearings round a feature, four marks or more, but no oblong.</summary>
    public static IEnumerable<Hypothesis> Plain(Shape shape, double[] x) => Uneven(shape, x).Where(r => !IsOblong(r, x)).Select(Offered);

    /// <summary>
    /// Corners of an oblong about a feature in its middle. They stand on a circle whether or not one was drawn, so this is
    /// weighed after rows and middle lines, and told only where it still adds to them.
    /// </summary>
    public static IEnumerable<Hypothesis> Oblongs(Shape shape, double[] x) => Uneven(shape, x).Where(r => IsOblong(r, x)).Select(Offered);

    static IEnumerable<Ring> Uneven(Shape shape, double[] x) =>
        Centred(shape, x).SelectMany<Ring, Ring>(r => r.Steps > 0 ? [r, r with { Steps = 0 }] : [r]).Where(r => r.Steps > 0 || r.Members.Length >= 4);

    static bool IsOblong(Ring ring, double[] x)
    {
        if (ring.Steps > 0 || ring.Members.Length != 4) return false;
        bool Halved(int a, int b) => ((ring.Shape.At(a, x) + ring.Shape.At(b, x)) / 2).DistanceTo(ring.Middle(x)) < Near;
        return Halved(ring.Members[0], ring.Members[2]) && Halved(ring.Members[1], ring.Members[3]);
    }

    public static IEnumerable<Hypothesis> Diameters(Ring ring, double[] x, Origin origin, OriginPrior prior) =>
        Distances.Rungs(2 * ring.Radius(ring.Members[0], x), origin, prior).Select(rung =>
            new Hypothesis(PatternKind.RoundDistance, ring.Members, [ring.Diameter(rung.Nominal.Value, rung.LogStretch)], 0)
            {
                About = $"circle round {About(ring)}",
                Nominal = rung.Nominal,
                Ring = ring,
            });

    /// <summary>The ring of marks that are named, in the order of their bearing.</summary>
    public static Ring Of(Shape shape, int centre, ImmutableArray<int> members, bool stepped)
    {
        var x = shape.Start;
        var at = new Ring(shape, centre, members, 0, []).Middle(x);
        ImmutableArray<int> sorted = [.. members.OrderBy(m => (shape.At(m, x) - at).Angle)];
        return stepped ? InSteps(shape, centre, sorted, at, x, double.PositiveInfinity) : new(shape, centre, sorted, 0, []);
    }

    static Hypothesis Offered(Ring ring)
    {
        var marks = ring.Shape.Places.Count(ring.Shape.IsMark);
        // Which centre, which marks, and how many steps.
        var choice = Math.Log(Math.Max(1, marks)) * (ring.Members.Length + (ring.Centre < 0 ? 0 : 1)) + (ring.Steps > 0 ? Math.Log(MostSteps) : 0);
        // The first two marks of a circle are free: any two may be chosen.
        return new(ring.Steps > 0 ? PatternKind.EqualSteps : PatternKind.PitchCircle, ring.Members, [.. ring.Conditions()], -choice)
        {
            About = About(ring),
            Ring = ring,
        };
    }

    static IEnumerable<Ring> Centred(Shape shape, double[] x)
    {
        foreach (var centre in shape.Places.Where(f => shape.IsMark(f) || shape.Kind(f) == Survey.FeatureKind.Arc))
        {
            var at = shape.At(centre, x);
            foreach (var alike in Alike(shape, x))
            {
                var byRadius = alike.Where(m => m != centre).Select(m => (Mark: m, Radius: shape.At(m, x).DistanceTo(at))).Where(m => m.Radius > 2 * Near).OrderBy(m => m.Radius).ToList();
                for (int i = 0, k; i < byRadius.Count; i = k)
                {
                    for (k = i + 1; k < byRadius.Count && byRadius[k].Radius - byRadius[k - 1].Radius < Near / 2 && byRadius[k].Radius - byRadius[i].Radius < Near;) k++;
                    if (k - i < 3) continue;
                    var members = byRadius[i..k].Select(m => m.Mark).OrderBy(m => (shape.At(m, x) - at).Angle).ToImmutableArray();
                    yield return InSteps(shape, centre, members, at, x, Near);
                }
            }
        }
    }

    /// <summary>The ring with the fewest steps that its bearings keep to.</summary>
    static Ring InSteps(Shape shape, int centre, ImmutableArray<int> members, Vec2 at, double[] x, double near)
    {
        var bearings = members.Select(m => (shape.At(m, x) - at).Angle).ToArray();
        var radius = shape.At(members[0], x).DistanceTo(at);
        for (var steps = members.Length; steps <= Math.Min(MostSteps, 2 * members.Length); steps++)
        {
            var turns = bearings.Select(b => (b - bearings[0]) * steps / (2 * Math.PI)).ToArray();
            if (turns.All(t => Math.Abs(t - Math.Round(t)) * 2 * Math.PI / steps * radius < near))
                return new(shape, centre, members, steps, [.. turns.Select(t => (int)Math.Round(t))]);
        }
        return new(shape, centre, members, 0, []);
    }

    /// <summary>Whole rings of five to eight marks and no feature in the middle; three only where there are few marks, which the odds see to.</summary>
    static IEnumerable<Ring> Polygons(Shape shape, double[] x)
    {
        foreach (var alike in Alike(shape, x))
        {
            var seen = new HashSet<string>();
            foreach (var sides in (int[])[3, 5, 6, 8])
                foreach (var a in alike)
                    foreach (var b in alike)
                        if (a != b && Polygon(shape, alike, a, b, sides, x) is { } ring && seen.Add(string.Join(',', ring.Members.Order()))) yield return ring;
        }
    }

    /// <summary>The polygon that goes on to the left of a side, when a mark stands at each corner.</summary>
    static Ring? Polygon(Shape shape, ImmutableArray<int> marks, int a, int b, int sides, double[] x)
    {
        var members = new List<int> { a, b };
        var (before, at) = (shape.At(a, x), shape.At(b, x));
        for (var n = 2; n < sides; n++)
        {
            var next = at + (at - before).Turned(2 * Math.PI / sides);
            var found = marks.MinBy(m => shape.At(m, x).DistanceTo(next));
            // The error of the first side grows as it is carried round.
            if (members.Contains(found) || shape.At(found, x).DistanceTo(next) > Near * (n - 0.5)) return null;
            members.Add(found);
            (before, at) = (at, shape.At(found, x));
        }
        return new(shape, -1, [.. members], sides, [.. Enumerable.Range(0, sides)]);
    }

    /// <summary>Marks of one size, since a circle of bolts takes one bolt; pricked points together.</summary>
    static IEnumerable<ImmutableArray<int>> Alike(Shape shape, double[] x)
    {
        var left = shape.Places.Where(shape.IsMark).ToList();
        while (left.Count > 0)
        {
            var first = left[0];
            double SizeOf(int f) => shape.SizeColumn(f) < 0 ? 0 : shape.Size(f, x);
            var alike = left.Where(f => shape.Kind(f) == shape.Kind(first) && Math.Abs(SizeOf(f) - SizeOf(first)) < 1e-5).ToImmutableArray();
            left.RemoveAll(alike.Contains);
            if (alike.Length >= 3) yield return alike;
        }
    }
}
