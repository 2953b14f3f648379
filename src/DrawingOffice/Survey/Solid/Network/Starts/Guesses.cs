using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>Where a feature might lie, roughly, for <see cref="LocalFit"/> to settle from: always the same few, the sketch's first.</summary>
static class Guesses
{
    /// <summary>The 26 ways out of the middle of a cube: faces, edges, corners.</summary>
    static readonly Vec3[] s_ways = [.. Ways()];

    /// <summary>Puts one guess after another into x, the feature's own unknowns alone.</summary>
    public static IEnumerable<int> Lay(SolidSolver solver, int feature, double[] x, IReadOnlyList<int> ties)
    {
        var layout = solver.Layout;
        return layout.HasPlace(feature) ? Places(solver, feature, x, ties)
            : layout.IsPlane(feature) ? Planes(solver, feature, x, ties)
            : Lines(solver, feature, x, ties);
    }

    static IEnumerable<int> Places(SolidSolver solver, int feature, double[] x, IReadOnlyList<int> ties)
    {
        var layout = solver.Layout;
        var at = layout.PlaceAt(feature);
        var count = 0;
        if (layout.Features[feature].Sketch is { } sketch)
        {
            SolidLayout.Write(at, x, sketch);
            yield return count++;
        }
        var middle = Middle(solver, feature, x, ties);
        var far = ties.Select(r => solver.Equations.Rows[r]).Where(o => o.Form is Form.Gap or Form.OffLine or Form.Over && o.Value > 0).Select(o => o.Value).DefaultIfEmpty(0.3 * layout.Lever).Average();
        foreach (var way in s_ways)
        {
            SolidLayout.Write(at, x, middle + far * way);
            yield return count++;
        }
    }

    static IEnumerable<int> Planes(SolidSolver solver, int feature, double[] x, IReadOnlyList<int> ties)
    {
        var layout = solver.Layout;
        var first = layout.First(feature);
        var count = 0;
        foreach (var normal in Directions(layout, feature, x))
        {
            SolidLayout.Write(first, x, normal * layout.Lever);
            double sum = 0;
            var places = 0;
            foreach (var o in ties.Select(r => solver.Equations.Rows[r]).Where(o => o.From >= 0))
            {
                if (layout.IsPlane(o.From) || o.Form is not (Form.Over or Form.Opposite)) continue;
                sum += normal.Dot(layout.Place(o.From, x) - layout.Middle) - (o.Signed ? o.Value : 0);
                places++;
            }
            x[first + 3] = places > 0 ? sum / places : layout.Features[feature].Sketch is { } s ? normal.Dot(s - layout.Middle) : 0;
            yield return count++;
        }
    }

    static IEnumerable<int> Lines(SolidSolver solver, int feature, double[] x, IReadOnlyList<int> ties)
    {
        var layout = solver.Layout;
        var first = layout.First(feature);
        var middle = layout.Features[feature].Sketch ?? Middle(solver, feature, x, ties);
        var count = 0;
        foreach (var along in Directions(layout, feature, x).Take(16))
        {
            SolidLayout.Write(first, x, along * layout.Lever);
            SolidLayout.Write(first + 3, x, Foot(layout, middle, along));
            yield return count++;
        }
    }

    /// <summary>The place of a line nearest the middle of the sketch.</summary>
    public static Vec3 Foot(SolidLayout layout, Vec3 place, Vec3 along) => place - along * along.Dot(place - layout.Middle);

    static IEnumerable<Vec3> Directions(SolidLayout layout, int feature, double[] x)
    {
        if (layout.Features[feature].SketchDirection is { Length: > 0 } sketched) yield return sketched.Unit;
        for (var i = 0; i < layout.Features.Length; i++)
        {
            if (i == feature || layout.DirectionAt(i) < 0 || SolidLayout.Read(layout.DirectionAt(i), x).Length == 0) continue;
            if (layout.Kind(i) == SolidKind.SetUp) continue;
            yield return layout.Direction(i, x);
            yield return -layout.Direction(i, x);
        }
        foreach (var way in s_ways) yield return way;
    }

    static Vec3 Middle(SolidSolver solver, int feature, double[] x, IReadOnlyList<int> ties)
    {
        var places = ties.SelectMany(solver.Named).Where(f => f != feature && solver.Layout.HasPlace(f)).Distinct().Select(f => solver.Layout.Place(f, x)).ToList();
        return places.Count == 0 ? solver.Layout.Middle : places.Aggregate(Vec3.Zero, (a, b) => a + b) / places.Count;
    }

    static IEnumerable<Vec3> Ways()
    {
        int[] steps = [0, 1, -1];
        return from z in steps
               from y in steps
               from x in steps
               where x != 0 || y != 0 || z != 0
               orderby x * x + y * y + z * z
               select new Vec3(x, y, z).Unit;
    }
}
