using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Cuts an edge where its law changes: at its own steps, at stations, and where the sheet's plan changes.</summary>
static class EdgeParts
{
    /// <summary>Cuts nearer than this are one, mm.</summary>
    const double Same = 1e-7;

    public static ImmutableArray<EdgePart> Of(Course line, ImmutableArray<double> marks, PlanSheet plan)
    {
        var cuts = new List<double>(marks);
        for (var i = 0; i <= line.Steps.Length; i++) cuts.Add(line.StartOf(i));
        for (var i = 1; i < plan.Count; i++)
            if (Under(line, plan.StartOf(i)) is var along && along > Same && along < line.Length - Same) cuts.Add(along);
        cuts.Sort();
        var parts = ImmutableArray.CreateBuilder<EdgePart>();
        var from = 0.0;
        foreach (var to in cuts)
        {
            if (to - from <= Same) continue;
            var middle = (from + to) / 2;
            parts.Add(new(from, to, line.StepAt(middle), plan.IsCrease(line.At(middle).X)));
            from = to;
        }
        return parts.ToImmutable();
    }

    /// <summary>How far along the edge comes over a place of the flat. Edges never run back, so halving finds it.</summary>
    static double Under(Course line, double x)
    {
        var (low, high) = (0.0, line.Length);
        for (var k = 0; k < 60; k++)
        {
            var middle = (low + high) / 2;
            if (line.At(middle).X < x) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }

    public static ImmutableArray<Wedge> Wedges(Course line, PlanSheet plan, bool upper, SideShape shape)
    {
        var wedges = ImmutableArray.CreateBuilder<Wedge>();
        for (var i = 1; i < line.Steps.Length; i++)
        {
            var turn = line.Steps[i].Heading - line.Steps[i - 1].EndHeading;
            turn -= Math.Round(turn / (2 * Math.PI)) * 2 * Math.PI;
            // Turning towards the flange, its runs lie over each other on the flat and part when it is folded up.
            var towards = upper ? turn : -turn;
            if (Math.Abs(turn) > 1e-9) wedges.Add(new(line.StartOf(i), towards, towards < 0, false));
        }
        for (var i = 0; i < plan.Count; i++)
            if (plan.Creases[i])
            {
                var turn = plan.Course.Steps[i].Curvature * plan.Course.Steps[i].Length;
                wedges.Add(new(Under(line, plan.StartOf(i) + plan.Flats[i] / 2), -turn * shape.Towards * Math.Sin(shape.Angle), false, true));
            }
        return [.. wedges.OrderBy(w => w.Along)];
    }
}
