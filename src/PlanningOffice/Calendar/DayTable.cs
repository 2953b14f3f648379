using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>
/// The days of one future, filled again for the next without allocating: built once for a calendar, a start and a length.
/// One worker each; not for sharing between threads.
/// </summary>
public sealed class DayTable
{
    readonly double[] _planned;
    readonly double[] _daylight;
    readonly double[] _cumulative;
    readonly double[] _noisy;
    readonly double[] _dryChance;
    readonly double[] _helperChance;
    readonly bool[] _dry;
    readonly bool[] _helper;
    readonly double _vanish;
    readonly double _sigma;
    readonly int _firstWeek;

    /// <param name="days">1 to 20,000.</param>
    public DayTable(WorkCalendar calendar, DateOnly start, int days)
    {
        if (calendar.Wrong is { } wrong) throw new RefusedException(wrong);
        if (days is < 1 or > 20_000) throw new RefusedException(Refusal.Of("days", $"{days}", "give 1 to 20000"));
        if (start.DayNumber + days > DateOnly.MaxValue.DayNumber) throw new RefusedException(Refusal.Of("start", $"{start:yyyy-MM-dd}", "give a date that leaves room for the days"));
        Start = start;
        (_planned, _daylight, _cumulative, _noisy) = (new double[days], new double[days], new double[days], new double[days]);
        (_dryChance, _helperChance, _dry, _helper) = (new double[days], new double[days], new bool[days], new bool[days]);
        _vanish = calendar.VanishChance;
        _sigma = Math.Sqrt(Math.Log(1 + calendar.WeekVariation * calendar.WeekVariation));
        // Weeks run Monday to Sunday.
        _firstWeek = 7 - ((int)start.DayOfWeek + 6) % 7;
        for (var d = 0; d < days; d++)
        {
            var day = start.AddDays(d);
            var hours = calendar.Week[(int)day.DayOfWeek];
            _planned[d] = calendar.Planned(day);
            _daylight[d] = hours.Total > 0 ? hours.Daylight / hours.Total : 0;
            _dryChance[d] = calendar.DryChance[day.Month - 1];
            _helperChance[d] = calendar.Away(day) ? 0 : calendar.HelperChance[(int)day.DayOfWeek];
        }
    }

    public DateOnly Start { get; }

    public int Days => _planned.Length;

    /// <summary>Hours worked from the start to the end of each day; never falls.</summary>
    public ReadOnlySpan<double> Cumulative => _cumulative;

    /// <summary>The same, of hours by daylight only, when noise is allowed.</summary>
    public ReadOnlySpan<double> CumulativeNoisy => _noisy;

    public ReadOnlySpan<bool> Dry => _dry;

    public ReadOnlySpan<bool> Helper => _helper;

    /// <summary>
    /// Draws one future. Days of a week share its fate; a day never holds more than 24 hours. Two numbers a week and two a day are
    /// drawn whatever the calendar says, so that futures stay paired when it is changed.
    /// </summary>
    public void Draw(Chance chance)
    {
        var (sum, noisy, factor, next) = (0.0, 0.0, Week(chance), _firstWeek);
        for (var d = 0; d < _planned.Length; d++)
        {
            if (d == next) (factor, next) = (Week(chance), next + 7);
            var hours = Math.Min(24, _planned[d] * factor);
            _cumulative[d] = sum += hours;
            _noisy[d] = noisy += hours * _daylight[d];
            _dry[d] = chance.Uniform() < _dryChance[d];
            _helper[d] = chance.Uniform() < _helperChance[d];
        }
    }

    double Week(Chance chance)
    {
        var gone = chance.Uniform() < _vanish;
        var factor = Math.Exp(_sigma * chance.Normal() - _sigma * _sigma / 2);
        return gone ? 0 : factor;
    }
}
