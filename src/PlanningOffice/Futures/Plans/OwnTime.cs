using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>The person's time, to be drawn anew for each future.</summary>
public interface IOwnTime
{
    /// <summary>Made ready for one worker: what is given back fills every day of the table for one future and allocates nothing.</summary>
    Action<Chance> Into(OwnDays days);
}

/// <summary>One future's days, used over and over.</summary>
/// <param name="count">Days, 1 or more.</param>
public sealed class OwnDays(DateOnly first, int count)
{
    public DateOnly First { get; } = first;

    public int Count { get; } = count;

    /// <summary>Hours by daylight, when noise is allowed.</summary>
    public float[] Day { get; } = new float[count];

    /// <summary>Hours in the evening: neither daylight nor noise.</summary>
    public float[] Evening { get; } = new float[count];

    public bool[] Dry { get; } = new bool[count];

    public bool[] Helper { get; } = new bool[count];
}

/// <summary>The same week over and over: enough to begin with.</summary>
/// <param name="Evening">Hours on each of Monday to Friday.</param>
/// <param name="Saturday">Hours by daylight.</param>
/// <param name="Vanish">Chance that a week vanishes, 0 to 1.</param>
/// <param name="Dry">Chance of a dry day.</param>
/// <param name="Helper">Chance that a helper comes on a Saturday.</param>
public sealed record WeeklyTime(double Evening, double Saturday, double Vanish, double Dry, double Helper) : IOwnTime
{
    /// <summary>Common practice.</summary>
    public static WeeklyTime Usual { get; } = new(1, 6, 0.15, 0.6, 0.5);

    public Action<Chance> Into(OwnDays days) => chance => Draw(chance, days);

    void Draw(Chance chance, OwnDays days)
    {
        var weekday = (int)days.First.DayOfWeek;
        var vanished = chance.Uniform() < Vanish;
        for (var d = 0; d < days.Count; d++, weekday = weekday == 6 ? 0 : weekday + 1)
        {
            // Each week draws one number for itself, each day two: a changed pattern does not shift the days behind it.
            if (weekday == 1) vanished = chance.Uniform() < Vanish;
            var bits = chance.NextBits();
            days.Dry[d] = (bits >> 32) * (1.0 / 4294967296) < Dry;
            days.Helper[d] = weekday == 6 && (bits & uint.MaxValue) * (1.0 / 4294967296) < Helper;
            days.Day[d] = weekday == 6 && !vanished ? (float)Saturday : 0;
            days.Evening[d] = weekday is > 0 and < 6 && !vanished ? (float)Evening : 0;
        }
    }
}
