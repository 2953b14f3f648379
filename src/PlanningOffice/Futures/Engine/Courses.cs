namespace WitnessMark.PlanningOffice.Futures;

/// <summary>What came out of each future; future f stands in place f whatever the number of workers.</summary>
public sealed class Courses
{
    /// <summary>Futures whose bars are kept: P10 and P90 of a bar are known to about a tenth of its spread.</summary>
    public const int KeptBars = 1000;

    internal readonly float[] FinishOf, HoursOf, MoneyOf, DryOf, Reached, Balance, Starts, Ends;

    internal Courses(ulong seed, int count, int jobs, int milestones, int months)
    {
        (Seed, Count, Months) = (seed, count, months);
        (FinishOf, HoursOf, MoneyOf, DryOf) = (new float[count], new float[count], new float[count], new float[count]);
        Reached = new float[count * milestones];
        Balance = new float[count * months];
        Starts = new float[Math.Min(count, KeptBars) * jobs];
        Ends = new float[Starts.Length];
    }

    public ulong Seed { get; }

    public int Count { get; }

    internal int Months { get; }

    /// <summary>Days from today.</summary>
    public ReadOnlySpan<float> Finish => FinishOf;

    /// <summary>Own hours.</summary>
    public ReadOnlySpan<float> Hours => HoursOf;

    /// <summary>Spent, in the purse's currency.</summary>
    public ReadOnlySpan<float> Money => MoneyOf;
}
