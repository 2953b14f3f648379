using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>
/// Lays a strip flat triangle by triangle from true lengths, and folds it up again. Exact but for rounding: 1e-9 mm over 20 000 triangles
/// of a metre.
/// </summary>
public static class Flatten
{
    /// <summary>The first rung stands on the y axis, its first point at the origin; the strip runs to the left.</summary>
    public static FlatStrip Of(Strip strip)
    {
        var n = strip.Rungs.Length;
        var (first, second) = (new Vec2[strip.First.Length], new Vec2[strip.Second.Length]);
        var angles = new double[n];
        second[0] = new(0, strip.First[0].DistanceTo(strip.Second[0]));
        // Square to the last triangle, towards the inside: carried on, for a sliver's own corners say little about its plane.
        var inner = Vec3.Zero;
        for (var i = 0; i + 1 < n; i++)
        {
            var (rung, next) = (strip.Rungs[i], strip.Rungs[i + 1]);
            var (foot, head) = (strip.First[rung.First], strip.Second[rung.Second]);
            var up = (head - foot).Unit;
            var point = next.First > rung.First ? strip.First[next.First] : strip.Second[next.Second];
            var (along, off) = Off(point - foot, up);
            var across = off.Length;
            // The last triangle goes on flat beyond the rung; the new one rises from that towards the inside.
            if (i > 0) angles[i] = Math.Atan2(off.Dot(inner), off.Dot(inner.Cross(up)));
            inner = up.Cross(off.Unit);
            var up2 = (second[rung.Second] - first[rung.First]).Unit;
            var placed = first[rung.First] + up2 * along + up2.Left * across;
            if (next.First > rung.First) first[next.First] = placed;
            else second[next.Second] = placed;
        }
        return new([.. first], [.. second], strip.Rungs, [.. angles]);
    }

    /// <summary>Folds a flat strip up by its angles alone, from where its first triangle lies.</summary>
    /// <param name="foot">Where the first point of the first edge goes.</param>
    /// <param name="up">Direction of the first rung, length 1.</param>
    /// <param name="on">Direction square to it in the first triangle, length 1.</param>
    public static Strip FoldUp(FlatStrip flat, Vec3 foot, Vec3 up, Vec3 on)
    {
        var (first, second) = (new Vec3[flat.First.Length], new Vec3[flat.Second.Length]);
        first[0] = foot;
        second[0] = foot + up * flat.First[0].DistanceTo(flat.Second[0]);
        var inner = up.Cross(on);
        for (var i = 0; i + 1 < flat.Rungs.Length; i++)
        {
            var (rung, next) = (flat.Rungs[i], flat.Rungs[i + 1]);
            var (a, b) = (first[rung.First], second[rung.Second]);
            var e = (b - a).Unit;
            var (s, c) = Math.SinCos(flat.Angles[i]);
            var beyond = (inner.Cross(e) * c + inner * s).Unit;
            inner = e.Cross(beyond);
            var e2 = (flat.Second[rung.Second] - flat.First[rung.First]).Unit;
            var d = (next.First > rung.First ? flat.First[next.First] : flat.Second[next.Second]) - flat.First[rung.First];
            var placed = a + e * d.Dot(e2) + beyond * d.Dot(e2.Left);
            if (next.First > rung.First) first[next.First] = placed;
            else second[next.Second] = placed;
        }
        return new([.. first], [.. second], flat.Rungs);
    }

    /// <summary>Greatest distance of a point from where folding the flat strip up again puts it, mm.</summary>
    public static double Error(Strip strip, FlatStrip flat)
    {
        var up = (strip.Second[0] - strip.First[0]).Unit;
        var next = strip.Rungs[1].First > 0 ? strip.First[1] : strip.Second[1];
        var again = FoldUp(flat, strip.First[0], up, Off(next - strip.First[0], up).Off.Unit);
        var worst = 0.0;
        for (var i = 0; i < strip.First.Length; i++) worst = Math.Max(worst, strip.First[i].DistanceTo(again.First[i]));
        for (var i = 0; i < strip.Second.Length; i++) worst = Math.Max(worst, strip.Second[i].DistanceTo(again.Second[i]));
        return worst;
    }

    static (double Along, Vec3 Off) Off(Vec3 d, Vec3 up) => d.Dot(up) is var along ? (along, d - up * along) : default;
}
