using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.PlanningOffice.Plans;

namespace WitnessMark.PlanningOffice.Next;

/// <summary>What to order today so that nothing waits later.</summary>
public static class ToOrder
{
    /// <summary>Share of orders that are to be in time.</summary>
    public const double InTime = 0.9;

    /// <summary>
    /// Supplies not ordered whose latest day is past or within <paramref name="ahead"/> days: the day needed less the P90 of the
    /// lead time. Earliest latest day first.
    /// </summary>
    /// <param name="needed">When each job could begin if its supplies were here: <see cref="PlanOrder"/> with
    /// <see cref="OrderFacts.SuppliesHoldUp"/> false. A job not in it is passed over.</param>
    /// <param name="ahead">Days, 0 or more.</param>
    public static ImmutableArray<OrderNow> Today(IEnumerable<Job> jobs, IReadOnlyDictionary<Guid, DateOnly> needed, DateOnly today, int ahead = 7) =>
    [
        .. from job in jobs
           where job.State != JobState.Done && needed.ContainsKey(job.Id)
           from lead in job.Leads
           where lead is { Side: LeadSide.Before, Here: false, Ordered: null }
           let day = needed[job.Id]
           let longest = lead.Days.Spread.Quantile(InTime)
           let latest = day.AddDays(-(int)Math.Ceiling(longest))
           where latest.DayNumber <= today.DayNumber + ahead
           orderby latest, day, job.Title
           select new OrderNow(job, lead, day, latest, Sentence(lead, day, longest, latest, today)),
    ];

    static string Sentence(Lead lead, DateOnly by, double longest, DateOnly latest, DateOnly today) =>
        $"{Begin(lead, latest, today)}: needed about {by.ToString("d MMMM", CultureInfo.InvariantCulture)}, it takes up to {Span(longest)}{Money(lead)}.";

    static string Begin(Lead lead, DateOnly latest, DateOnly today) =>
        latest > today ? $"Order by {latest.ToString("d MMMM", CultureInfo.InvariantCulture)} \"{lead.Words}\"" : $"Order today \"{lead.Words}\"";

    static string Span(double days) => days >= 21 ? $"{Math.Ceiling(days / 7):0} weeks" : $"{Math.Ceiling(days):0} days";

    static string Money(Lead lead) => lead.Price.High == 0 ? ""
        : $", about {lead.Price.Likely.ToString("0.##", CultureInfo.InvariantCulture)} {lead.Price.Currency}"
          + (lead.Deposit > 0 ? $" of which {((double)lead.Price.Likely * lead.Deposit).ToString("0.##", CultureInfo.InvariantCulture)} now" : "");
}
