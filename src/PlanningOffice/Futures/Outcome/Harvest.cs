using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>Reads the forecast off the futures that were run.</summary>
sealed class Harvest(Simulation simulation)
{
    readonly Model _model = simulation.Model;
    readonly Courses _courses = simulation.Courses;

    DateOnly Today => _model.Input.Today;

    public PlanForecast Forecast()
    {
        var finish = Dates(_courses.FinishOf);
        var drivers = new Drivers(_model, _courses).All();
        var bars = Bars();
        var unfinished = _courses.FinishOf.Count(d => d >= _model.Horizon) / (double)_courses.Count;
        return new(Today, Today.AddDays(_model.Horizon), unfinished, finish, [.. _model.Input.Milestones.Select(Reached)],
            Spread.Of(Copy(_courses.HoursOf)), Spread.Of(Copy(_courses.MoneyOf)), Cash(), bars, drivers,
            new Looks(_model, _courses).All(), DriverWords.Of(drivers, bars, Dries()), Told(unfinished));
    }

    MilestoneForecast Reached(Milestone milestone, int m)
    {
        var days = new float[_courses.Count];
        for (var f = 0; f < days.Length; f++) days[f] = _courses.Reached[f * _model.MilestoneJobs.Length + m];
        double? inTime = milestone.Wanted is { } by ? days.Count(d => d < by.DayNumber - Today.DayNumber + 1) / (double)days.Length : null;
        return new(milestone.Id, milestone.Name, Dates(days), milestone.Wanted, inTime);
    }

    CashCurve Cash()
    {
        var months = _model.Income.MonthStart;
        var last = Spread.Of(Copy(_courses.FinishOf)).P90.Value;
        var column = new float[_courses.Count];
        var curve = ImmutableArray.CreateBuilder<CashMonth>();
        for (var m = 0; m < months.Length && (m == 0 || months[m - 1] <= last); m++)
        {
            for (var f = 0; f < column.Length; f++) column[f] = _courses.Balance[f * months.Length + m];
            Array.Sort(column);
            curve.Add(new(Today.AddDays(months[m] - 1), At(column, 0.1), At(column, 0.5), At(column, 0.9)));
        }
        var dry = Array.FindAll(_courses.DryOf, float.IsFinite);
        return new(_model.Input.Means.Purse.Currency, _model.Income.Limited, curve.ToImmutable(), Dries(), dry.Length < Spread.FewestFutures ? null : Dates(dry));
    }

    double Dries() => _courses.DryOf.Count(float.IsFinite) / (double)_courses.Count;

    ImmutableArray<JobBar> Bars()
    {
        var n = _model.Lines.Length;
        return [.. _model.Jobs.Select((job, j) => new JobBar(job.Id, job.SystemId, job.Title, Range(_courses.Starts, j, n), Range(_courses.Ends, j, n),
            simulation.Workers.Sum(w => w.Critical[j]) / (double)_courses.Count))];
    }

    DayRange Range(float[] all, int j, int n)
    {
        var days = new float[all.Length / n];
        for (var f = 0; f < days.Length; f++) days[f] = all[f * n + j];
        Array.Sort(days);
        return new(Day(At(days, 0.1)), Day(At(days, 0.5)), Day(At(days, 0.9)));
    }

    DateOnly Day(double days) => Today.AddDays((int)days);

    DateSpread Dates(float[] days) => new(Today, Spread.Of(Copy(days)));

    ImmutableArray<string> Told(double unfinished) =>
    [
        "Counts the jobs on the list only: what nobody has written down yet is not in it.",
        .. _model.Input.Pace.Caution is { Length: > 0 } pace ? [pace] : Array.Empty<string>(),
        .. unfinished > 0 ? [$"{unfinished:0.0%} of the futures are not over by {Today.AddDays(_model.Horizon):d MMMM yyyy}; later days are not told apart."] : Array.Empty<string>(),
        .. _model.Leads.Any(l => l.From >= 0.999f) ? ["Something on order is later than its longest lead time: it is taken to come today. Ask for a new date."] : Array.Empty<string>(),
    ];

    static double[] Copy(float[] from) => Array.ConvertAll(from, x => (double)x);

    static double At(float[] sorted, double p) => sorted[(int)Math.Round(p * (sorted.Length - 1))];
}
