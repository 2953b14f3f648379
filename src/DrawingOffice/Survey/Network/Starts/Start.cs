using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// Where the adjustment starts. Sketched and picked features start there; the rest are placed one after the other from the
/// readings that tie them, from nothing if need be.
/// </summary>
static class Start
{
    /// <summary>One start, or several when nothing but the adjustment can tell which is right.</summary>
    public static IReadOnlyList<double[]> From(Solver solver, CancellationToken stop)
    {
        var layout = solver.Layout;
        var x = new double[layout.Count];
        Sizes(solver, x);
        FreeEdges(solver, x);
        var placed = new bool[layout.Features.Length];
        for (var i = 0; i < placed.Length; i++)
            if (layout.HasPlace(i) && layout.Features[i].Sketch is { } p && !Taken(layout, x, placed, p)) Put(layout, x, placed, i, p);
        FromPicks(solver, x, placed);
        x = Sketched(solver, x, placed, stop);
        var complete = Enumerable.Range(0, placed.Length).All(i => placed[i] || !layout.HasPlace(i));
        var starts = complete ? [x] : new Construction(solver, stop).Grow(x, placed);
        foreach (var start in starts)
        {
            FreeEdgesFromReadings(solver, start);
            Frames(solver, start);
        }
        return starts;
    }

    /// <summary>What was sketched is adjusted by itself first, so that the rest is placed from a true shape and not from a rough one.</summary>
    static double[] Sketched(Solver solver, double[] x, bool[] placed, CancellationToken stop)
    {
        var layout = solver.Layout;
        var missing = Enumerable.Range(0, placed.Length).Any(i => layout.HasPlace(i) && !placed[i]);
        if (!missing || placed.Count(p => p) < 3) return x;
        var weights = (double[])solver.Weights.Clone();
        for (var r = 0; r < weights.Length; r++)
            if (solver.Equations.Rows[r].Kind == ReadingKind.Picked || !solver.Places(r).All(f => placed[f])) weights[r] = 0;
        return solver.Minimise(x, weights, stop).X;
    }

    /// <summary>A place sketched for two features is no place for the second: between them a distance has no direction to grow in.</summary>
    static bool Taken(Layout layout, double[] x, bool[] placed, Vec2 p)
    {
        for (var i = 0; i < placed.Length; i++)
            if (placed[i] && layout.Place(i, x).DistanceTo(p) < 1e-6 * layout.Lever) return true;
        return false;
    }

    static void Put(Layout layout, double[] x, bool[] placed, int feature, Vec2 p)
    {
        (x[layout.First(feature)], x[layout.First(feature) + 1]) = (p.X, p.Y);
        placed[feature] = true;
    }

    static void Sizes(Solver solver, double[] x)
    {
        var layout = solver.Layout;
        double? Read(string id, ReadingKind kind) =>
            solver.Sample.Readings.Where(r => r.From == id && r.Kind == kind).Select(r => (double?)r.Value).FirstOrDefault();

        for (var i = 0; i < layout.Features.Length; i++)
        {
            var f = layout.Features[i];
            var usual = 0.05 * layout.Lever;
            switch (f.Kind)
            {
                case FeatureKind.Hole:
                    x[layout.First(i) + 2] = Read(f.Id, ReadingKind.Diameter) ?? f.SketchSize ?? usual;
                    break;
                case FeatureKind.Arc:
                    x[layout.First(i) + 2] = Read(f.Id, ReadingKind.Radius) ?? f.SketchSize ?? RadiusOfChord(Read(f.Id, ReadingKind.Chord), Read(f.Id, ReadingKind.Rise)) ?? 2 * usual;
                    break;
                case FeatureKind.Slot:
                    var width = Read(f.Id, ReadingKind.SlotWidth) ?? f.SketchSize ?? usual;
                    x[layout.First(i) + 2] = (f.SketchTurn ?? 0) * layout.Lever;
                    x[layout.First(i) + 3] = Read(f.Id, ReadingKind.SlotLength) - width ?? f.SketchLength ?? 2 * usual;
                    x[layout.First(i) + 4] = width;
                    break;
            }
        }
    }

    /// <summary>r = (c²/4 + h²)/(2h).</summary>
    static double? RadiusOfChord(double? chord, double? rise) => chord is { } c && rise is { } h && h > 0 ? (c * c / 4 + h * h) / (2 * h) : null;

    /// <summary>Picks of the first frame stand in for a sketch where nothing else is known.</summary>
    static void FromPicks(Solver solver, double[] x, bool[] placed)
    {
        var layout = solver.Layout;
        if (layout.Frames.IsEmpty || placed.Any(p => p)) return;
        foreach (var r in solver.Sample.Readings)
            if (r.Kind == ReadingKind.Picked && r.Frame == layout.Frames[0]) Put(layout, x, placed, layout.IndexOf(r.From), new Vec2(r.Value, r.ValueY));
    }

    static void FreeEdges(Solver solver, double[] x)
    {
        var layout = solver.Layout;
        for (var i = 0; i < layout.Features.Length; i++)
        {
            if (!layout.IsFreeEdge(i)) continue;
            var turn = layout.Features[i].SketchTurn ?? 0;
            x[layout.First(i)] = turn * layout.Lever;
            x[layout.First(i) + 1] = Vec2.Polar(turn).Left.Dot(layout.Features[i].Sketch ?? Vec2.Zero);
        }
    }

    /// <summary>A free edge without a sketch: the common tangent, of all those to pairs of circles about features at their read distances, that fits the readings best.</summary>
    static void FreeEdgesFromReadings(Solver solver, double[] x)
    {
        var layout = solver.Layout;
        for (var e = 0; e < layout.Features.Length; e++)
        {
            if (!layout.IsFreeEdge(e) || layout.Features[e].Sketch is not null) continue;
            var rows = Enumerable.Range(0, solver.Equations.Rows.Length).Where(r => solver.Equations.Rows[r].To == e && layout.HasPlace(solver.Equations.Rows[r].From)).ToList();
            var circles = rows.Select(r => solver.Equations.Rows[r]).Select(o => (At: layout.Place(o.From, x), Off: o.Value + (o.Kind is ReadingKind.EdgeToHole or ReadingKind.Tangent ? layout.Radius(o.From, x) : 0))).ToList();
            var (best, least) = ((x[layout.First(e)], x[layout.First(e) + 1]), double.PositiveInfinity);
            for (var i = 0; i < circles.Count; i++)
                for (var k = 0; k < i; k++)
                    foreach (var (turn, offset) in Tangents(circles[i].At, circles[i].Off, circles[k].At, circles[k].Off))
                    {
                        (x[layout.First(e)], x[layout.First(e) + 1]) = (turn * layout.Lever, offset);
                        var misfit = rows.Sum(r => solver.Weights[r] * Math.Pow(solver.Equations.Residual(r, x), 2));
                        if (misfit < least) (best, least) = ((turn * layout.Lever, offset), misfit);
                    }
            (x[layout.First(e)], x[layout.First(e) + 1]) = best;
        }
    }

    /// <summary>Lines n·p = offset at distance ±r₁ from p₁ and ±r₂ from p₂.</summary>
    static IEnumerable<(double Turn, double Offset)> Tangents(Vec2 p1, double r1, Vec2 p2, double r2)
    {
        var between = p2 - p1;
        if (between.Length < 1e-9) yield break;
        foreach (var s in new[] { r1, -r1 })
            foreach (var t in new[] { r2, -r2 })
            {
                var sine = (t - s) / between.Length;
                if (Math.Abs(sine) > 1) continue;
                // n·(p2 − p1) = t − s, with n a quarter turn left of the line.
                var turn = between.Angle - Math.Asin(sine);
                yield return (turn, Vec2.Polar(turn).Left.Dot(p1) - s);
            }
    }

    /// <summary>Shift and turn of each frame of picks that best lay its picks on the places as they stand.</summary>
    static void Frames(Solver solver, double[] x)
    {
        var layout = solver.Layout;
        for (var k = 0; k < layout.Frames.Length; k++)
        {
            var picks = solver.Sample.Readings.Where(r => r.Kind == ReadingKind.Picked && r.Frame == layout.Frames[k])
                .Select(r => (Here: layout.Place(layout.IndexOf(r.From), x), There: new Vec2(r.Value, r.ValueY))).ToList();
            var here = picks.Aggregate(Vec2.Zero, (s, p) => s + p.Here) / picks.Count;
            var there = picks.Aggregate(Vec2.Zero, (s, p) => s + p.There) / picks.Count;
            var turn = Math.Atan2(picks.Sum(p => (p.Here - here).Cross(p.There - there)), picks.Sum(p => (p.Here - here).Dot(p.There - there)));
            var shift = there - here.Turned(turn);
            var first = layout.FrameAt(k);
            (x[first], x[first + 1], x[first + 2]) = (shift.X, shift.Y, turn * layout.Lever);
        }
    }
}
