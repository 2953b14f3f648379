namespace WitnessMark.PlanningOffice.Next;

/// <summary>Whether a ready job can be done in the time and circumstances at hand.</summary>
static class Fit
{
    /// <summary>What keeps it from being done now, as a clause; null when nothing does.</summary>
    public static string? Hinders(Job job, FreeTime time, double bias) =>
        !Plans.PlanCheck.Supplied(job) ? Waiting(job)
        : job.Needs.Helper && !time.Helper ? "wants a helper"
        : job.Needs.DryDay && !time.Dry ? "wants a dry day"
        : job.Needs.Daylight && !time.Daylight ? "wants daylight"
        : job.Needs.Noisy && !time.NoiseAllowed ? "is too noisy for the hour"
        : job.Needs.Place == WorkPlace.Bench && !time.BenchFree && job.State != JobState.InHand ? "wants the bench"
        : job.Needs.Place == WorkPlace.Bay && !time.BayFree && job.State != JobState.InHand ? "wants the bay"
        : time.SmallOnly ? (job.Hours.High * bias <= time.Hours ? null : "is not a small one")
        : Whole(job, time, bias) || StopAfter(job, time, bias) is not null ? null : "takes longer and has no good stopping place";

    /// <summary>Likely to be over within the time.</summary>
    public static bool Whole(Job job, FreeTime time, double bias) => job.Hours.Likely * bias <= time.Hours;

    /// <summary>The last step of its card that is likely to be over; null when it fits whole or has no such step.</summary>
    public static Step? StopAfter(Job job, FreeTime time, double bias)
    {
        if (job.Card is not { } card || Whole(job, time, bias)) return null;
        var (sum, last) = (0.0, (Step?)null);
        foreach (var step in card.Steps)
        {
            if ((sum += step.Hours.Likely * bias) > time.Hours) break;
            last = step;
        }
        return last;
    }

    static string Waiting(Job job)
    {
        var lead = job.Leads.First(l => l.Side == LeadSide.Before && !l.Here);
        return lead.Ordered is { } on ? $"waits for \"{lead.Words}\", ordered on {on:yyyy-MM-dd}" : $"waits for \"{lead.Words}\", which is not ordered";
    }
}
