using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>The rail seen in plan, and the edges of its web on the flat.</summary>
static class RailPlan
{
    public static Parsed<PlanSheet> Of(Rail rail, BendMethod method)
    {
        var crease = rail.InsideRadius + rail.Thickness / 2;
        var traverse = new Traverse([.. rail.Stations.Select(s => new Vec2(s.At, s.Plan))], [.. rail.Stations.Select(s => s.Ease > 0 ? s.Ease : crease)]);
        var (course, _, noRoom) = traverse.Rounded();
        if (noRoom >= 0) return Moulds.NoRoom(rail, noRoom);
        course = Merged(course);
        var flats = ImmutableArray.CreateBuilder<double>(course.Steps.Length);
        var creases = ImmutableArray.CreateBuilder<bool>(course.Steps.Length);
        foreach (var step in course.Steps)
        {
            var folded = step.Curvature != 0 && Math.Abs(step.Curvature * crease - 1) < 1e-9 || Math.Abs(step.Curvature * crease + 1) < 1e-9;
            creases.Add(folded);
            if (!folded) flats.Add(step.Length);
            else if (method.For(step.Length * step.Curvature, rail.InsideRadius, rail.Thickness) is { Ok: true } allowance) flats.Add(allowance.Value.Length);
            else return method.For(step.Length * step.Curvature, rail.InsideRadius, rail.Thickness).Refusal!;
        }
        return new PlanSheet(course, flats.MoveToImmutable(), creases.MoveToImmutable());
    }

    /// <summary>Straights that run on in one line are one: a straight rail is one sheet however many stations it has.</summary>
    static Course Merged(Course course)
    {
        var steps = ImmutableArray.CreateBuilder<Step>();
        foreach (var step in course.Steps)
        {
            if (step.Curvature == 0 && steps.Count > 0 && steps[^1] is { Curvature: 0 } last && Math.Abs(last.Heading - step.Heading) < Traverse.Straight)
                steps[^1] = last with { Length = last.Length + step.Length };
            else steps.Add(step);
        }
        return new(steps.ToImmutable());
    }
}

static class Moulds
{
    public static Parsed<(Mould Lower, Mould Upper)> Of(Rail rail, PlanSheet plan)
    {
        // On the flat a station comes where the plan puts it.
        var radii = rail.Stations.Select(s => s.Ease).ToImmutableArray();
        var planMarks = new Traverse([.. rail.Stations.Select(s => new Vec2(s.At, s.Plan))],
            [.. rail.Stations.Select(s => s.Ease > 0 ? s.Ease : rail.InsideRadius + rail.Thickness / 2)]).Rounded().Marks;
        var lower = new Traverse([.. rail.Stations.Select((s, k) => new Vec2(plan.FlatOf(planMarks[k]), s.Level))], radii);
        var heights = rail.Stations.Select(s => s.Web).ToArray();
        if (lower.Beside(heights) is not { } upper)
            return Refusal.Of("ease", $"{rail.Stations.Where((s, k) => s.Ease > 0 && lower.Turn(k) > 0 && s.Ease <= s.Web).First().Ease:0.###} mm",
                "where the rail sweeps upwards the arc of its lower edge must be larger than the web is high");
        var (below, belowMarks, noRoomBelow) = lower.Rounded();
        if (noRoomBelow >= 0) return NoRoom(rail, noRoomBelow);
        var (above, aboveMarks, noRoomAbove) = upper.Rounded();
        if (noRoomAbove >= 0) return NoRoom(rail, noRoomAbove);
        return (new Mould(lower, below, belowMarks), new Mould(upper, above, aboveMarks));
    }

    public static Refusal NoRoom(Rail rail, int station) => Refusal.Of($"station {station + 1}, ease", $"{rail.Stations[station].Ease:0.###} mm",
        "the straights beside this station are too short for that arc; give a smaller radius or set the stations further apart");
}
