namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// The plan in flat arrays, jobs in the order of the priority list: job 0 is taken before job 1 when both could be. Shared by
/// all workers and never changed.
/// </summary>
sealed class Model
{
    public required PlanInput Input { get; init; }
    public required Job[] Jobs { get; init; }
    public required int Horizon { get; init; }
    public required JobLine[] Lines { get; init; }

    /// <summary>Followers of job j are those from FollowerStart[j] to FollowerStart[j + 1].</summary>
    public required int[] FollowerStart { get; init; }
    public required int[] Followers { get; init; }

    /// <summary>Predecessors and supplies each job waits for.</summary>
    public required int[] Waits { get; init; }
    public required LeadLine[] Leads { get; init; }
    public required FindLine[] Finds { get; init; }
    public required SharedCause[] Causes { get; init; }
    public required ulong[] CauseKeys { get; init; }
    public required PaceGroup[] Groups { get; init; }
    public required int[][] MilestoneJobs { get; init; }
    public required MoneyIn Income { get; init; }
    public required ulong Seed { get; init; }

    /// <summary>True for the run at means that tells when supplies would be wanted.</summary>
    public bool AtMeans { get; init; }
}

/// <param name="Needs">Bits of <see cref="Needed"/>.</param>
/// <param name="Behind">First of its lead times behind, −1 for none; they follow one another.</param>
readonly record struct JobLine(Amount Hours, ulong HoursKey, int Group, Amount Cost, ulong CostKey, byte Needs, byte Place, int Behind);

/// <param name="Next">The lead time behind this one on the same job, −1 for none.</param>
/// <param name="Order">Day it is ordered, from today; below 0 when that has been.</param>
/// <param name="From">Share of the distribution ruled out because it has not come yet.</param>
readonly record struct LeadLine(
    int Job, bool Before, int Next, int Order, float From, Amount Days, Amount Price, float Deposit, bool Ordered, ulong Key);

/// <param name="Cause">Place of its cause, −1 when it stands alone.</param>
/// <param name="Found">1 it is so, 0 it is not, −1 to be drawn.</param>
readonly record struct FindLine(
    int Cause, float Edge, float Pull, float Own, int Found, ulong Key, AfterLine[] Then, Discovery Of, int Job, double Odds);

/// <param name="Lead">Lead time that its days lengthen, −1 for none.</param>
readonly record struct AfterLine(int Job, int Lead, Amount Hours, Amount Days, Amount Cost, ulong Key);

static class Needed
{
    public const byte Daylight = 1, Dry = 2, Helper = 4;
}

/// <summary>Money as it comes in, by day from today.</summary>
/// <param name="OnHand">Endless when nothing is said.</param>
/// <param name="Once">Sums on single days.</param>
/// <param name="MonthStart">Days on which a month begins.</param>
sealed record MoneyIn(bool Limited, double OnHand, Amount EachMonth, double[] Once, int[] MonthStart, ulong Key);
