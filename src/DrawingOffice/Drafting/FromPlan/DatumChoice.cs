using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.FromPlan;

/// <summary>Which corner the drawing counts from, and which edge it lies along.</summary>
static class DatumChoice
{
    // Corners this near to the left bottom one, as a share of width and height together, stand in for it.
    const double Slack = 0.02;

    // As far as a sketch is drawn askew by a free hand, radians (15°). An edge farther off slants, and no part is laid on that while others are level.
    const double Askew = Math.PI / 12;

    /// <summary>
    /// As named; else of the edges at the corner nearest to the left bottom (as the part was sketched) the one from which all places are known best.
    /// What is loose is a datum only where nothing else is left.
    /// </summary>
    /// <exception cref="RefusedException">There is no edge, or what was named is not on the plan.</exception>
    public static PlanFrame Of(Plan plan, Sample sample, string? origin, string? along)
    {
        foreach (var id in new[] { origin, along })
        {
            if (id is not null && !plan.Features.Any(f => f.Id == id && f.Kind != FeatureKind.Edge)) throw Refused("datum", id, "name a corner, hole, slot or arc of the sample");
        }
        var level = Level(plan, sample);
        if (origin is not null && along is not null) return new(plan, origin, along, level);
        var edges = sample.Features.Where(f => f is { Kind: FeatureKind.Edge, From: not null, To: not null }).Select(f => (From: f.From!, To: f.To!)).ToList();
        if (edges.Count == 0) throw Refused("outline", null, "edges and arcs from corner to corner all the way round, one of them straight, are needed before the part is drawn");
        var ends = edges.Concat(edges.Select(e => (From: e.To, To: e.From)))
            .Where(e => (origin is null || e.From == origin) && plan.Of(e.From).At.DistanceTo(plan.Of(e.To).At) > PlanFrame.Least).ToList();
        if (ends.Count == 0) throw Refused("datum", origin, "an edge between two corners is needed to lay the axes on");
        var frames = Better(Better(ends, e => !plan.Of(e.From).Loose && !plan.Of(e.To).Loose).Select(e => new PlanFrame(plan, e.From, e.To, level)),
            f => Math.Abs(Math.IEEERemainder(f.Turn - level, 2 * Math.PI)) <= Askew);
        return (origin is null ? AtLeftBottom(plan, edges.SelectMany(e => new[] { e.From, e.To }), frames) : frames).MinBy(f => Doubt(plan, f))!;
    }

    /// <summary>Those that are better, or all where none is.</summary>
    static List<T> Better<T>(IEnumerable<T> all, Predicate<T> isBetter)
    {
        var list = all.ToList();
        return list.FindAll(isBetter) is { Count: > 0 } better ? better : list;
    }

    /// <summary>Direction of the sketch's x on the plan, radians: the turn that brings the sketch closest to the plan. Without a sketch the plan's own.</summary>
    static double Level(Plan plan, Sample sample)
    {
        var sketched = sample.Features.Where(f => f is { Sketch: not null } && f.Kind != FeatureKind.Edge).Select(f => (Drawn: f.Sketch!.Value, plan.Of(f.Id).At)).ToList();
        if (sketched.Count < 2) return 0;
        var (drawn, placed) = (Mean(sketched.Select(s => s.Drawn)), Mean(sketched.Select(s => s.At)));
        return Math.Atan2(sketched.Sum(s => (s.Drawn - drawn).Cross(s.At - placed)), sketched.Sum(s => (s.Drawn - drawn).Dot(s.At - placed)));
    }

    static Vec2 Mean(IEnumerable<Vec2> places) => new(places.Average(p => p.X), places.Average(p => p.Y));

    static IEnumerable<PlanFrame> AtLeftBottom(Plan plan, IEnumerable<string> corners, List<PlanFrame> frames)
    {
        var places = corners.Distinct().Select(c => plan.Of(c).At).ToList();
        var off = frames.Select(f => Off(Box.Round(places.Select(f.Of)))).ToList();
        var nearest = off.Min();
        return frames.Where((_, i) => off[i] <= nearest + Slack);
    }

    // From the left bottom of what encloses the corners to the origin, against width and height.
    static double Off(Box box) => -(box.Left + box.Bottom) / (box.Width + box.Height);

    /// <summary>How many places are not known from this datum, then the sum of their variances, mm².</summary>
    static (int Unknown, double Variance) Doubt(Plan plan, PlanFrame frame)
    {
        var stds = plan.Features.Where(f => !f.Loose && f.Id != frame.Origin && f.Kind != FeatureKind.Edge)
            .SelectMany(f => new[] { frame.Std(new(frame.Origin, f.Id, new(1, 0), 0)), frame.Std(new(frame.Origin, f.Id, new(0, 1), 0)) }).ToList();
        return (stds.Count(s => s is null), stds.Sum(s => s * s ?? 0));
    }

    static RefusedException Refused(string field, string? value, string wanted) => new(Refusal.Of(field, value, wanted));
}
