namespace WitnessMark.PlanningOffice.Plans;

/// <summary>Expected calendar days of a job.</summary>
public static class Days
{
    /// <summary>Days from <paramref name="today"/> until the job's supplies not yet here are expected, by their means; an order already overdue counts as coming tomorrow.</summary>
    public static double Before(Job job, DateOnly today) =>
        job.Leads.Where(l => l.Side == LeadSide.Before && !l.Here).Select(l => Left(l, today)).DefaultIfEmpty(0).Max();

    /// <summary>Days behind its own work until what follows may begin.</summary>
    public static double Behind(Job job) =>
        job.Leads.Where(l => l.Side == LeadSide.Behind && !l.Here).Select(l => l.Days.Spread.Mean).DefaultIfEmpty(0).Max();

    static double Left(Lead lead, DateOnly today) =>
        lead.Ordered is { } on ? Math.Max(1, lead.Days.Spread.Mean - (today.DayNumber - on.DayNumber)) : lead.Days.Spread.Mean;
}
