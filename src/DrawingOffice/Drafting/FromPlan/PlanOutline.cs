using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.FromPlan;

/// <summary>Edges and arcs between corners, put end to end into closed outlines.</summary>
static class PlanOutline
{
    sealed record Side(string Id, string From, string To, Placed Placed);

    /// <summary>Closed outlines, the one round the largest area first.</summary>
    /// <exception cref="RefusedException">A corner has one side only, or more than two.</exception>
    public static ImmutableArray<ImmutableArray<Segment>> Of(Plan plan, Sample sample, PlanFrame frame, Decisions decisions)
    {
        var open = sample.Features
            .Where(f => f.Kind is FeatureKind.Edge or FeatureKind.Arc && f.From is not null && f.To is not null)
            .Select(f => new Side(f.Id, f.From!, f.To!, plan.Of(f.Id))).ToList();
        if (open.Count == 0) throw new RefusedException(Refusal.Of("outline", null, "name the edges and arcs between the corners, all the way round"));
        Check(open);
        var loops = new List<ImmutableArray<Segment>>();
        while (open.Count > 0) loops.Add(Walk(open, plan, frame, decisions));
        return [.. loops.OrderByDescending(l => Math.Abs(Area(l)))];
    }

    static void Check(List<Side> sides)
    {
        foreach (var corner in sides.SelectMany(s => new[] { s.From, s.To }).GroupBy(c => c).Where(g => g.Count() != 2))
        {
            var names = string.Join(", ", sides.Where(s => s.From == corner.Key || s.To == corner.Key).Select(s => s.Id));
            throw new RefusedException(Refusal.Of("outline", $"corner {corner.Key} with {names}", "an outline closes when every corner has exactly two edges or arcs"));
        }
    }

    static ImmutableArray<Segment> Walk(List<Side> open, Plan plan, PlanFrame frame, Decisions decisions)
    {
        var loop = ImmutableArray.CreateBuilder<Segment>();
        var at = open[0].From;
        while (open.Find(s => s.From == at || s.To == at) is { } side)
        {
            open.Remove(side);
            var next = side.From == at ? side.To : side.From;
            loop.Add(Piece(side, frame.Of(plan.Of(at).At), frame.Of(plan.Of(next).At), at, frame, decisions));
            at = next;
        }
        return loop.ToImmutable();
    }

    static Segment Piece(Side side, Vec2 from, Vec2 to, string corner, PlanFrame frame, Decisions decisions)
    {
        if (side.Placed.Kind == FeatureKind.Edge) return new LineSegment(from, to, corner);
        // The adjusted centre, brought onto the middle line of the two ends: they differ by rounding only.
        var middle = (from + to) / 2;
        var across = (to - from).Left.Unit;
        var centre = middle + across * (frame.Of(side.Placed.At) - middle).Dot(across);
        var sweep = Math.IEEERemainder((to - centre).Angle - (from - centre).Angle, 2 * Math.PI);
        return new ArcSegment(from, to, centre, sweep, corner)
        {
            Known = side.Placed.Size is { } size ? new(size.Value, size.Std, decisions.MadeTo(side.Id), decisions.Wanted(side.Id)) : null,
        };
    }

    static double Area(ImmutableArray<Segment> loop)
    {
        var points = Outlines.Points(loop).ToList();
        return points.Zip(points.Skip(1).Append(points[0])).Sum(p => p.First.Cross(p.Second)) / 2;
    }
}
