using System.Globalization;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Edges;

/// <summary>
/// A hole from one click inside it: edges met along rays from the click, the circle (on the sheet, so an ellipse in the picture) that most of them
/// agree on, then the rim found anew across that circle and fitted.
/// </summary>
public static class HoleFit
{
    const int Rays = 72;

    /// <summary>Edges looked at along one ray; a scratch or a lower rim may come first.</summary>
    const int EachRay = 3;

    /// <summary>Of light, 0 to 1; less than this is not a rim that a fit could hold.</summary>
    const double LeastChange = 0.02;

    /// <summary>Triples tried. Cause: with half of the rays misled, one triple in eight is right; sixty misses in a row are as good as impossible, and 400 cost a millisecond.</summary>
    const int Tries = 400;

    /// <summary>Of the rim. Cause: less than half a circle holds its diameter badly.</summary>
    const double LeastShare = 0.5;

    /// <summary>The same where the face stands off the sheet and only the rim that hides its own wall counts.</summary>
    const double LeastShareOfHidden = 0.25;

    /// <summary>Radii between the hole's middle and the foot of the camera; nearer, too little of the rim hides its wall.</summary>
    const double FarFromFoot = 3;

    /// <summary>Of the radius; a rim rougher than this is not round.</summary>
    const double Roughest = 0.04;

    /// <param name="inside">px, anywhere in the hole (or on a round boss, or coin).</param>
    /// <param name="largest">Largest diameter looked for, mm.</param>
    public static Parsed<HoleSeen> Of(TruePhoto photo, Vec2 inside, double largest = 120)
    {
        var hidden = Of(photo, inside, largest, byHidden: true);
        // Too little of that half may be seen; the whole rim is then better than none.
        return hidden.Ok || !MayStandOff(photo) ? hidden : Of(photo, inside, largest, byHidden: false);
    }

    /// <param name="byHidden">Where the far wall shows, only the rim that hides its own wall counts.</param>
    static Parsed<HoleSeen> Of(TruePhoto photo, Vec2 inside, double largest, bool byHidden)
    {
        if (!photo.Light.Holds(inside, 2)) return Refusal.Of("hole", Said(inside), "a place inside the hole, in the picture");
        if (Rough(photo, inside, largest) is not { } found)
            return Refusal.Of("hole", Said(inside), $"no round edge is seen about this place up to {largest:0.#} mm: pick inside a hole whose rim stands out");
        var (centre, radius, toLight) = found;
        var half = byHidden && WallShows(photo, centre, radius);
        List<EdgePoint> points = [];
        for (var round = 0; round < 3; round++)
        {
            points = Rim(photo, centre, radius, toLight, half);
            if (Robust(points) is not { } kept || Circles.Fit([.. kept.Select(p => p.Mm)]) is not var (c, r)) return NotRound(inside);
            (points, centre, radius) = (kept, c, r);
        }
        var drawn = Rounding.Of(points, radius);
        var rows = points.Select(p => (p.Mm - centre).Unit is var u && u.Dot(p.Across) >= 0 ? new[] { u.X, u.Y, 1 } : [-u.X, -u.Y, -1]).ToArray();
        double[] residuals = [.. points.Select(p => p.Mm.DistanceTo(centre) - radius)];
        var share = Share(points, centre);
        if (share < (half ? LeastShareOfHidden : LeastShare) || Fitted.Of(photo, points, rows, residuals) is not { } fitted || fitted.Scatter > Roughest * radius + 0.05) return NotRound(inside);
        var covariance = fitted.Covariance(photo, [[1, 0, 0], [0, 1, 0], [0, 0, 2]]);
        var spread = new Spread(covariance[0, 0], covariance[0, 1], covariance[1, 1]) + Spots.OfModel(photo) + Spots.OfPrint(photo.Print, centre);
        var wall = Wall(photo, centre, radius, half);
        // Threefold: the same height moves the scale too, so the two may add up whole and not by squares; twice this ± then holds both.
        if (!half && photo.HeightUnsaid) spread += Spread.Along((centre - photo.Face.Foot) * photo.Face.ScaleStd) * 3;
        // The two directions' difference makes the circle an ellipse, and its mean diameter stays.
        var shrink = 1 - photo.Face.Share;
        var std = Math.Sqrt(covariance[2, 2] + 4 * drawn.Std * drawn.Std + wall * wall);
        return new HoleSeen(Spots.OnFace(photo, centre, spread), new(2 * (radius + drawn.Value) * shrink, std * shrink), fitted.Scatter * shrink, share,
            [.. Enumerable.Range(0, 90).Select(k => photo.Camera.ToPhoto(centre + Vec2.Polar(k * Math.PI / 45, radius)))]);
    }

    readonly record struct Hit(int Ray, Vec2 Mm, bool ToLight);

    /// <summary>
    /// The circle on the sheet that most rays agree on, and whether its rim goes from dark to light outward. First among all edges that stand out of
    /// the noise; where dirt and scratches hide it among those, among the strong ones.
    /// </summary>
    static (Vec2 Centre, double Radius, bool ToLight)? Rough(TruePhoto photo, Vec2 inside, double largest)
    {
        var changes = Changes(photo, inside, largest);
        if (changes.Count == 0) return null;
        var noise = 1.4826 * changes.SelectMany(c => c).Select(Math.Abs).Order().ElementAt(changes.Sum(c => c.Length) / 2);
        var strong = changes.Select(c => c.Max(Math.Abs)).Order().ElementAt(changes.Count / 2);
        return Agreed(photo, inside, largest, Hits(photo, inside, changes, Math.Max(LeastChange, 5 * noise)))
            ?? Agreed(photo, inside, largest, Hits(photo, inside, changes, Math.Max(LeastChange, 0.3 * strong)));
    }

    static (Vec2 Centre, double Radius, bool ToLight)? Agreed(TruePhoto photo, Vec2 inside, double largest, List<Hit> hits)
    {
        if (hits.Count < Rays / 3) return null;
        var (click, near, chance) = (photo.Camera.ToSheet(inside), 1.5 / photo.Camera.PixelsPerMm(photo.Camera.ToSheet(inside)), new Chance(1));
        (int Count, Vec2 Centre, double Radius, bool ToLight) best = default;
        for (var n = 0; n < Tries; n++)
        {
            Hit a = hits[chance.Below(hits.Count)], b = hits[chance.Below(hits.Count)], c = hits[chance.Below(hits.Count)];
            if (a.Ray == b.Ray || b.Ray == c.Ray || a.Ray == c.Ray || a.ToLight != b.ToLight || b.ToLight != c.ToLight) continue;
            if (Circles.Through(a.Mm, b.Mm, c.Mm) is not var (centre, radius) || radius > largest / 2 || click.DistanceTo(centre) > radius) continue;
            var (off, count, last) = (near + 0.01 * radius, 0, -1);
            foreach (var h in hits)
                if (h.Ray != last && h.ToLight == a.ToLight && Math.Abs(h.Mm.DistanceTo(centre) - radius) < off) (count, last) = (count + 1, h.Ray);
            if (count > best.Count) best = (count, centre, radius, a.ToLight);
        }
        return best.Count >= Rays / 2 ? (best.Centre, best.Radius, best.ToLight) : null;
    }

    /// <summary>Along each ray, pixel by pixel from the first, the light a pixel and a half ahead less that as far behind.</summary>
    static List<double[]> Changes(TruePhoto photo, Vec2 inside, double largest)
    {
        var reach = (int)Math.Min(2000, largest * photo.Camera.PixelsPerMm(photo.Camera.ToSheet(inside)) * 1.2);
        var changes = new List<double[]>(Rays);
        for (var ray = 0; ray < Rays; ray++)
        {
            var way = Way(ray);
            var along = new List<double>();
            for (var k = 1; k <= reach && photo.Light.Holds(inside + way * (k + 2)); k++) along.Add(photo.Light.At(inside + way * (k + 1.5)) - photo.Light.At(inside + way * (k - 1.5)));
            if (along.Count < 3) return [];
            changes.Add([.. along]);
        }
        return changes;
    }

    /// <summary>The first places along each ray where the light changes most quickly and by more than the limit, in the order of the rays.</summary>
    static List<Hit> Hits(TruePhoto photo, Vec2 inside, List<double[]> changes, double limit)
    {
        var hits = new List<Hit>();
        for (var ray = 0; ray < changes.Count; ray++)
        {
            var (along, taken) = (changes[ray], 0);
            for (var k = 1; k + 1 < along.Length && taken < EachRay; k++)
            {
                var here = Math.Abs(along[k]);
                if (here < limit || here < Math.Abs(along[k - 1]) || here <= Math.Abs(along[k + 1])) continue;
                hits.Add(new(ray, photo.Camera.ToSheet(inside + Way(ray) * (k + 1)), along[k] > 0));
                taken++;
            }
        }
        return hits;
    }

    static Vec2 Way(int ray) => Vec2.Polar(2 * Math.PI * ray / Rays);

    /// <summary>The rim across a circle, a pixel and a half apart.</summary>
    static List<EdgePoint> Rim(TruePhoto photo, Vec2 centre, double radius, bool toLight, bool byHidden)
    {
        var scale = photo.Camera.PixelsPerMm(centre);
        var n = Math.Clamp((int)(2 * Math.PI * radius * scale / 1.5), 16, 400);
        var points = new List<EdgePoint>(n);
        for (var k = 0; k < n; k++)
        {
            var angle = 2 * Math.PI * k / n;
            if (byHidden && centre + Vec2.Polar(angle, radius) is var rim && (photo.Face.Foot - rim).Dot(centre - rim) > 0) continue;
            Vec2 At(double a, double r) => photo.Camera.ToPhoto(centre + Vec2.Polar(a, r));
            var middle = At(angle, radius);
            var across = (At(angle + 0.02, radius) - At(angle - 0.02, radius)).Left.Unit;
            if (across.Dot(At(angle, radius * 1.02) - middle) < 0) across = -across;
            var room = Math.Clamp(0.35 * middle.DistanceTo(photo.Camera.ToPhoto(centre)), 2.7, 7);
            if (!photo.Light.Holds(middle, 2) || EdgeProfile.Fit(photo.Light, middle, across, room, 0.02) is not { } met || met.Step > 0 != toLight) continue;
            points.Add(EdgePoint.Of(photo.Camera, middle + across * met.Offset, toLight ? across : -across, met.Blur));
        }
        return points;
    }

    /// <summary>
    /// The camera looks at the far wall of a hole in a face above the sheet, and the wall's lower edge, against the paper, is the sharper one: by it
    /// a hole in a 1.6 mm plate came out 0.4 mm small. The near half of the rim hides its wall and is the face's own.
    /// </summary>
    static bool WallShows(TruePhoto photo, Vec2 centre, double radius) => MayStandOff(photo) && centre.DistanceTo(photo.Face.Foot) > FarFromFoot * radius;

    static bool MayStandOff(TruePhoto photo) => photo.Face.Share > 0 || photo.HeightUnsaid;

    /// <summary>
    /// Standard ± that a wall of unsaid height leaves in a diameter, mm: the face may be nearer the lens than it is taken for, and of a whole rim the
    /// far wall may hide as much again of the opening as the two edges lie apart, which moves its middle too.
    /// </summary>
    static double Wall(TruePhoto photo, Vec2 centre, double radius, bool half) =>
        !photo.HeightUnsaid ? 0 : photo.Face.ScaleStd * (half ? 2 * radius : Math.Max(2 * radius, centre.DistanceTo(photo.Face.Foot)));

    /// <summary>Those near the circle that most agree on; null when too few.</summary>
    static List<EdgePoint>? Robust(List<EdgePoint> points)
    {
        var kept = points;
        for (var round = 0; round < 3; round++)
        {
            if (kept.Count < 10 || Circles.Fit([.. kept.Select(p => p.Mm)]) is not var (c, r)) return null;
            double Off(EdgePoint p) => Math.Abs(p.Mm.DistanceTo(c) - r);
            var limit = 3.5 * Math.Max(1e-4, 1.4826 * kept.Select(Off).Order().ElementAt(kept.Count / 2));
            kept = [.. points.Where(p => Off(p) <= limit)];
        }
        return kept;
    }

    /// <summary>Of twelve parts of a turn, those with a point in them.</summary>
    static double Share(List<EdgePoint> points, Vec2 centre) =>
        points.Select(p => (int)((p.Mm - centre).Angle / (2 * Math.PI) * 12 + 12) % 12).Distinct().Count() / 12.0;

    static Refusal NotRound(Vec2 inside) => Refusal.Of("hole", Said(inside), "the edge about this place is not round, or less than half of it is seen: trace it instead");

    static string Said(Vec2 px) => string.Create(CultureInfo.InvariantCulture, $"{px.X:0}, {px.Y:0}");
}
