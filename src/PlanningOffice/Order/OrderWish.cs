using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Order;

/// <summary>
/// What a good order is: least makespan + Σ weight × end + the penalty for every activity that leaves its standing start.
/// Empty arrays leave their part out. Costs are counted in slots of makespan.
/// </summary>
public sealed record OrderWish
{
    /// <summary>One per activity, 0 or more: what a slot later of its end costs. Early milestones weigh.</summary>
    public ImmutableArray<double> Weights { get; init; } = [];

    /// <summary>Starts of the plan that stands.</summary>
    public ImmutableArray<int> Standing { get; init; } = [];

    /// <summary>Slots of makespan that one moved activity costs.</summary>
    public double MovePenalty { get; init; }

    public bool IsMakespan => Weights.IsEmpty && Standing.IsEmpty;

    public double Cost(Project project, ReadOnlySpan<int> starts)
    {
        var (end, cost) = (0, 0.0);
        for (var i = 0; i < starts.Length; i++)
        {
            var done = starts[i] + project.Activities[i].Duration;
            end = Math.Max(end, done);
            if (!Weights.IsEmpty) cost += Weights[i] * done;
            if (!Standing.IsEmpty && starts[i] != Standing[i]) cost += MovePenalty;
        }
        return end + cost;
    }

    public Refusal? Wrong(Project project)
    {
        var count = project.Activities.Length;
        if (!Weights.IsEmpty && Weights.Length != count) return Refusal.Of("weights", $"{Weights.Length}", $"there must be one for each of the {count} jobs");
        foreach (var w in Weights)
            if (!(w >= 0 && double.IsFinite(w))) return Refusal.Of("weight", $"{w}", "it must be 0 or more");
        if (!Standing.IsEmpty && Standing.Length != count) return Refusal.Of("standing starts", $"{Standing.Length}", $"there must be one for each of the {count} jobs");
        foreach (var s in Standing)
            if (s is < 0 or > Project.LongestHorizon) return Refusal.Of("standing start", $"{s}", $"it must be 0 to {Project.LongestHorizon}");
        if (!(MovePenalty >= 0 && double.IsFinite(MovePenalty))) return Refusal.Of("move penalty", $"{MovePenalty}", "it must be 0 or more");
        return null;
    }
}
