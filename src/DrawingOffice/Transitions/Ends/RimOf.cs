using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>The rim of an end, its sizes moved out to the layer that is developed.</summary>
public static class RimOf
{
    /// <param name="name">For refusals, e.g. "first end".</param>
    /// <param name="out">Every side is moved outwards by this, mm; negative inwards.</param>
    public static Parsed<Rim> End(End end, string name, double @out) => end.Form switch
    {
        RoundForm f => Oval(f.Diameter / 2 + @out, f.Diameter / 2 + @out, $"{name}, diameter", f.Diameter, end.Frame),
        OvalForm f => Oval(f.Width / 2 + @out, f.Height / 2 + @out, $"{name}, width and height", Math.Min(f.Width, f.Height), end.Frame),
        BoxForm f => Box(f, name, @out, end.Frame),
        PolygonForm f => Polygon(f, name, @out, end.Frame),
        _ => Refusal.Of(name, end.Form.GetType().Name, "give a circle, ellipse, rectangle or polygon"),
    };

    static Parsed<Rim> Oval(double a, double b, string field, double given, Motion3 frame) => a > 0 && b > 0 && double.IsFinite(a + b) && given > 0
        ? new Rim([new ArcSide(frame.Origin, frame.X * a, frame.Y * b, 0, Math.Tau)], frame)
        : Refusal.Of(field, $"{given:0.###} mm", "give more than 0, and more than the thickness when it is measured outside");

    static Parsed<Rim> Box(BoxForm f, string name, double @out, Motion3 frame)
    {
        var (w, h) = (f.Width + 2 * @out, f.Height + 2 * @out);
        // A sharp corner stays sharp: the sheet is creased there.
        var r = f.CornerRadius > 0 ? f.CornerRadius + @out : 0;
        if (!(Math.Min(f.Width, f.Height) > 0 && Math.Min(w, h) > 0)) return Refusal.Of($"{name}, width and height", $"{f.Width:0.###} by {f.Height:0.###} mm", "give more than 0, and more than twice the thickness when they are measured outside");
        if (!(f.CornerRadius >= 0 && r >= 0 && 2 * r <= Math.Min(w, h) * (1 + 1e-12)))
            return Refusal.Of($"{name}, radius", $"{f.CornerRadius:0.###} mm", $"give 0 to {Math.Min(f.Width, f.Height) / 2:0.###} mm, half the smaller side");
        Vec2[] corners = [new(w / 2, -h / 2), new(w / 2, h / 2), new(-w / 2, h / 2), new(-w / 2, -h / 2)];
        if (r == 0) return Straight(corners, frame);
        var sides = ImmutableArray.CreateBuilder<RimSide>();
        for (var i = 0; i < 4; i++)
        {
            var (from, to) = (corners[(i + 3) % 4], corners[i]);
            var along = (to - from).Unit;
            Add(sides, frame, from + along * r, to - along * r);
            var centre = frame.Map(to - along * r + along.Left * r);
            sides.Add(new ArcSide(centre, frame.X * r, frame.Y * r, (-along.Left).Angle, Math.PI / 2));
        }
        return new Rim(sides.ToImmutable(), frame);
    }

    static Parsed<Rim> Polygon(PolygonForm f, string name, double @out, Motion3 frame)
    {
        var n = f.Corners.Length;
        if (n < 3) return Refusal.Of($"{name}, corners", $"{n} corners", "give 3 or more");
        for (var i = 0; i < n; i++)
        {
            var (a, b, c) = (f.Corners[i], f.Corners[(i + 1) % n], f.Corners[(i + 2) % n]);
            if (!((b - a).Unit.Cross((c - b).Unit) > 1e-6) || !(a.Cross(b) > 0))
                return Refusal.Of($"{name}, corner {(i + 1) % n + 1}", $"{b.X:0.###}, {b.Y:0.###}", "give corners anticlockwise round the middle 0, 0, each turning left");
        }
        var moved = new Vec2[n];
        for (var i = 0; i < n; i++)
        {
            var (before, after) = ((f.Corners[i] - f.Corners[(i + n - 1) % n]).Unit, (f.Corners[(i + 1) % n] - f.Corners[i]).Unit);
            moved[i] = Plane2.Meet(f.Corners[i] - before.Left * @out, before, f.Corners[i] - after.Left * @out, after)!.Value;
        }
        for (var i = 0; i < n; i++)
            if ((moved[(i + 1) % n] - moved[i]).Dot(f.Corners[(i + 1) % n] - f.Corners[i]) <= 0)
                return Refusal.Of($"{name}, side {i + 1}", $"{f.Corners[i].DistanceTo(f.Corners[(i + 1) % n]):0.###} mm", "make it longer than the thickness takes off it");
        return Straight(moved, frame);
    }

    static Rim Straight(Vec2[] corners, Motion3 frame)
    {
        var sides = ImmutableArray.CreateBuilder<RimSide>(corners.Length);
        for (var i = 0; i < corners.Length; i++) Add(sides, frame, corners[i], corners[(i + 1) % corners.Length]);
        return new(sides.ToImmutable(), frame);
    }

    // Round ends leave no straight between them.
    static void Add(ImmutableArray<RimSide>.Builder sides, Motion3 frame, Vec2 from, Vec2 to)
    {
        if (from.DistanceTo(to) > 1e-9) sides.Add(new StraightSide(frame.Map(from), frame.Map(to)));
    }
}
