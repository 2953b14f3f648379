using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>Lays a cone flat about its point: arcs for an upright one, exact points joined by chords for a leaning one.</summary>
public static class ConeLay
{
    /// <param name="from">Where the piece begins round the base, radians.</param>
    /// <param name="sweep">Radians round the base, 2π for the whole.</param>
    /// <param name="error">Greatest distance of chords from the curves, mm.</param>
    public static Laid Of(string name, Cone cone, double from, double sweep, double error)
    {
        var n = Math.Max(2, (int)Math.Round(cone.Stations(error) * sweep / Math.Tau));
        var angles = Enumerable.Range(0, n + 1).Select(k => from + sweep * k / n).ToArray();
        var strip = Strip(cone, angles);
        var folds = Flatten.Of(strip);
        var at = Place(cone, angles);
        var point = cone.Top == 0;
        var first = angles.Select((t, k) => at[k] * cone.Reach(t)).ToArray();
        var second = angles.Select((t, k) => at[k] * (cone.Reach(t) * cone.Top / cone.Base)).ToArray();
        var bends = folds.Rungs.Select((r, i) => (r, a: folds.Angles[i])).Where(x => x.r.Element).Select(x => x.a).ToArray();
        var elements = angles.Select((_, k) => new FlatElement(first[k], second[k], bends[k], k == 0 || k == n)).ToImmutableArray();
        var outline = cone.Upright ? Sector(cone, at, sweep) : Laid.Around(first, point ? [Vec2.Zero] : second);
        return new(name, outline, elements, strip);
    }

    /// <summary>The triangles of the made flats: all elements through the point, so each span is one plane.</summary>
    static Strip Strip(Cone cone, double[] angles)
    {
        var rungs = new List<Rung> { new(0, 0, true) };
        for (var k = 1; k < angles.Length; k++)
        {
            if (cone.Top > 0) rungs.Add(new(k, k - 1, false));
            rungs.Add(new(k, cone.Top > 0 ? k : 0, true));
        }
        return new([.. angles.Select(cone.OnBase)], cone.Top > 0 ? [.. angles.Select(cone.OnTop)] : [cone.Point], [.. rungs]);
    }

    /// <summary>Directions of the elements from the point at the origin, the piece lying square to the page and running to the left.</summary>
    static Vec2[] Place(Cone cone, double[] angles)
    {
        var open = new double[angles.Length];
        for (var k = 1; k < angles.Length; k++) open[k] = open[k - 1] + cone.Opening(angles[k - 1], angles[k]);
        var half = open[^1] / 2;
        return [.. open.Select(o => cone.Base > cone.Top ? Vec2.Polar(-Math.PI / 2 + half - o) : Vec2.Polar(Math.PI / 2 - half + o))];
    }

    static Loop Sector(Cone cone, Vec2[] at, double sweep)
    {
        var (outer, total) = (cone.Reach(0), cone.Opening(0, sweep));
        var pieces = Math.Max(1, (int)Math.Ceiling(total / (Math.PI / 2) - 1e-9));
        var step = total / pieces;
        var sign = cone.Base > cone.Top ? 1 : -1;
        var bulge = sign * Math.Tan(step / 4);
        var corners = ImmutableArray.CreateBuilder<Corner>();
        for (var k = 0; k <= pieces; k++) corners.Add(new(at[^1].Turned(sign * step * k) * outer, k < pieces ? bulge : 0));
        if (cone.Top == 0) corners.Add(new(Vec2.Zero));
        else
            for (var k = 0; k <= pieces; k++) corners.Add(new(at[0].Turned(-sign * step * k) * (outer * cone.Top / cone.Base), k < pieces ? -bulge : 0));
        return new(corners.ToImmutable());
    }
}
