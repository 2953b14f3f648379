using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice;

/// <summary>What the bias is learnt from.</summary>
public static class FinishedJobs
{
    /// <summary>
    /// Jobs done with a guess and hours logged, in the order of their last entry. The guess is the mean of the PERT-beta as it
    /// stands on the job; a guess lowered while the work went on makes the person look slower than he is, so it is left as first made.
    /// </summary>
    public static ImmutableArray<FinishedJob> Of(IEnumerable<Job> jobs, HoursHistory history)
    {
        var entries = history.Standing.ToLookup(e => e.JobId);
        return
        [
            .. from j in jobs
               where j.State == JobState.Done && j.Hours.Wrong is null && j.Hours.Spread.Mean > 0 && entries.Contains(j.Id)
               orderby entries[j.Id].Max(e => e.StartedAt), j.Id
               select new FinishedJob(j.Kind, j.SystemId, j.Hours.Spread.Mean, entries[j.Id].Sum(e => e.Minutes) / 60),
        ];
    }
}
