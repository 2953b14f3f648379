using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Rails.Flattening;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Solids;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>A blank held against a fine mesh of the formed face, laid flat as rigidly as can be.</summary>
/// <param name="Face">Which face.</param>
/// <param name="Outline">Greatest distance between the blank's edge and the mesh's, best laid on each other, mm.</param>
/// <param name="Flat">Strain and area that even the best flat piece is wrong by; nearly 0 where the face unrolls.</param>
public sealed record MeshBound(string Face, double Outline, Flattened Flat);

/// <summary>Bounds the error of a rail's blanks by another road. Takes seconds: not for the live path.</summary>
public static class MeshCheck
{
    const int Across = 8;

    /// <summary>Most cells along; the rest of the error is the mesh's own chords, about length² / (24 · radius²) of a cell.</summary>
    const int MostAlong = 240;

    /// <param name="progress">Rounds done on the face at hand.</param>
    public static ImmutableArray<MeshBound> Of(RailForm form, IProgress<int>? progress = null, CancellationToken stop = default)
    {
        var bounds = ImmutableArray.CreateBuilder<MeshBound>();
        bounds.Add(Bound("web", form, (x, t) =>
        {
            var (low, high) = (form.Lower.Line.At(form.Lower.AlongAt(x)), form.Upper.Line.At(form.Upper.AlongAt(x)));
            var flat = low + (high - low) * t;
            return (form.Stand(x, flat).At, flat);
        }, progress, stop));
        foreach (var edge in form.Folds)
        {
            if (edge.Wedges.Length > 0) continue;
            var sheet = FlangeSheet.Of(edge);
            bounds.Add(Bound($"{edge.Name} flange", form, (x, t) =>
            {
                var along = edge.AlongAt(x);
                var flat = edge.Shape!.Allowance + edge.Shape.Flat(edge.FlangeAt(along)) * t;
                return (form.Stand(edge, along, edge.Place(along), flat).At, sheet.Place(along, flat).At);
            }, progress, stop));
        }
        return bounds.ToImmutable();
    }

    static MeshBound Bound(string face, RailForm form, Func<double, double, (Vec3 Formed, Vec2 Blank)> at, IProgress<int>? progress, CancellationToken stop)
    {
        var places = Places(form);
        var (points, blank) = (ImmutableArray.CreateBuilder<Vec3>(), new List<Vec2>());
        for (var j = 0; j <= Across; j++)
            foreach (var x in places)
            {
                var (formed, flat) = at(x, (double)j / Across);
                points.Add(formed);
                blank.Add(flat);
            }
        var n = places.Count;
        var triangles = ImmutableArray.CreateBuilder<Triangle>();
        // The sense of the blank: anticlockwise.
        var left = (blank[1] - blank[0]).Cross(blank[n] - blank[0]) > 0;
        for (var j = 0; j < Across; j++)
            for (var i = 0; i + 1 < n; i++)
            {
                var (a, b, c, d) = (j * n + i, j * n + i + 1, (j + 1) * n + i + 1, (j + 1) * n + i);
                triangles.Add(left ? new(a, b, c) : new(a, c, b));
                triangles.Add(left ? new(a, c, d) : new(a, d, c));
            }
        var laid = Flatten.Run(new(points.ToImmutable(), triangles.ToImmutable()), blank, progress, stop);
        return new(face, Worst(blank, laid.Points, n), laid);
    }

    /// <summary>Evenly along, with every section at which the law changes, so that no cell lies across a joint.</summary>
    static List<double> Places(RailForm form)
    {
        var (first, last) = (form.Rail.Stations[0].At, form.Rail.Stations[^1].At);
        var places = new List<double>(RailBody.Places(form));
        for (var k = 0; k <= MostAlong / 2; k++) places.Add(first + (last - first) * k / (MostAlong / 2));
        places.Sort();
        var apart = new List<double> { places[0] };
        foreach (var x in places)
            if (x - apart[^1] > (last - first) / MostAlong / 4) apart.Add(x);
        apart[^1] = last;
        return apart;
    }

    /// <summary>Best rigid fit of the mesh on the blank, then the worst place of the outline.</summary>
    static double Worst(List<Vec2> blank, ImmutableArray<Vec2> laid, int n)
    {
        var (a, b) = (Middle(blank), Middle(laid));
        var (dot, cross) = (0.0, 0.0);
        for (var i = 0; i < blank.Count; i++) (dot, cross) = (dot + (laid[i] - b).Dot(blank[i] - a), cross + (laid[i] - b).Cross(blank[i] - a));
        var turn = Math.Atan2(cross, dot);
        var worst = 0.0;
        for (var i = 0; i < blank.Count; i++)
            if (i < n || i >= blank.Count - n || i % n == 0 || i % n == n - 1) worst = Math.Max(worst, (a + (laid[i] - b).Turned(turn)).DistanceTo(blank[i]));
        return worst;
    }

    static Vec2 Middle(IReadOnlyCollection<Vec2> points) => points.Aggregate(Vec2.Zero, (s, p) => s + p) / points.Count;
}
