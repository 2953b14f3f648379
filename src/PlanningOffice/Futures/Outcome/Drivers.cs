using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// What makes the finish uncertain. For each cause the futures are cut into slices of equal number by its value; the variance
/// of the slices' mean finishes over the whole variance is its first-order share (correlation ratio: A. Saltelli et al.,
/// Global Sensitivity Analysis: The Primer, 2008, first-order index by slicing a scatter plot). What chance alone would give,
/// (slices − 1)/futures, is taken off. Shares of causes that work together are in no first-order share, so the sum may stay
/// below 1. The causes' values are drawn again from their keys, not kept.
/// </summary>
sealed class Drivers(Model model, Courses courses)
{
    const int Slices = 20;

    /// <summary>Only the jobs and lead times whose own spread is greatest are looked at: the others cannot matter more.</summary>
    const int MostLookedAt = 60;

    /// <summary>Below this a share is not told from chance with 10,000 futures.</summary>
    const double Least = 0.002;

    readonly double _mean = courses.FinishOf.Average(x => (double)x);
    readonly float[] _value = new float[courses.Count], _finish = new float[courses.Count];

    public ImmutableArray<Driver> All()
    {
        var draws = new Draws(model);
        return [.. Jobs(draws).Concat(Leads()).Concat(Finds()).Concat(Pace(draws)).Append(Time(draws))
            .Where(d => d.Share > Least).OrderByDescending(d => d.Share)];
    }

    IEnumerable<Driver> Jobs(Draws draws)
    {
        var ownSd = new float[courses.Count];
        for (var f = 0; f < ownSd.Length; f++)
        {
            draws.Factors(f);
            ownSd[f] = draws.OwnSd;
        }
        return Enumerable.Range(0, model.Lines.Length).OrderByDescending(j => model.Lines[j].Hours.Range + model.Input.Pace.JobSd * model.Lines[j].Hours.Mean)
            .Take(MostLookedAt).Select(j =>
            {
                // The factor that all share is a cause of its own.
                var line = model.Lines[j] with { Group = 0 };
                return new Driver(DriverKind.Hours, model.Jobs[j].Id, $"hours of \"{model.Jobs[j].Title}\"", Share(f => Draws.JobHours(line, One, ownSd[f], f)));
            });
    }

    IEnumerable<Driver> Leads() =>
        model.Leads.Where(l => l.Days.Range > 0).OrderByDescending(l => l.Days.Range).Take(MostLookedAt).Select(lead =>
        {
            var job = model.Jobs[lead.Job];
            return new Driver(DriverKind.LeadTime, job.Id, $"{(lead.Before ? "supply for" : "waiting behind")} \"{job.Title}\"",
                Share(f => Draws.LeadDays(lead, Keyed.Bits(lead.Key, f))));
        });

    IEnumerable<Driver> Finds() =>
        from find in model.Finds
        where find.Found < 0 && find.Then.Length > 0
        select new Driver(DriverKind.Discovery, model.Jobs[find.Job].Id, $"whether {find.Of.Words}", TwoSlices(f => Draws.IsSo(model, find, f)));

    /// <summary>Kinds of work that share one factor are one cause.</summary>
    IEnumerable<Driver> Pace(Draws draws)
    {
        var first = draws.Factors(0).ToArray();
        var kinds = Enumerable.Range(0, first.Length).DistinctBy(g => first[g]).DistinctBy(g => model.Groups[g].Kind).ToList();
        return kinds.Select(g => new Driver(DriverKind.OwnPace, null,
            kinds.Count == 1 ? "your own pace" : $"your own pace at {model.Groups[g].Kind.Words()}", Share(f => draws.Factors(f)[g])));
    }

    Driver Time(Draws draws)
    {
        var until = Math.Min(draws.Own.Days - 1, (int)_mean);
        return new(DriverKind.OwnTime, null, "the time you find", Share(f =>
        {
            draws.OwnTime(f);
            return (float)draws.Own.Cumulative[until];
        }));
    }

    static readonly float[] One = [1];

    double Share(Func<int, float> value)
    {
        for (var f = 0; f < _value.Length; f++) _value[f] = value(f);
        courses.FinishOf.CopyTo(_finish, 0);
        Array.Sort(_value, _finish);
        if (_value[0] == _value[^1]) return 0;
        var between = 0.0;
        for (var s = 0; s < Slices; s++)
        {
            var slice = _finish.AsSpan((int)((long)s * _finish.Length / Slices)..(int)((s + 1L) * _finish.Length / Slices));
            between += slice.Length * Square(Mean(slice) - _mean);
        }
        return Ratio(between, Slices);
    }

    double TwoSlices(Func<int, bool> so)
    {
        double sum = 0, rest = 0;
        var n = 0;
        for (var f = 0; f < courses.Count; f++)
            if (so(f)) (sum, n) = (sum + courses.FinishOf[f], n + 1);
            else rest += courses.FinishOf[f];
        return n == 0 || n == courses.Count ? 0 : Ratio(n * Square(sum / n - _mean) + (courses.Count - n) * Square(rest / (courses.Count - n) - _mean), 2);
    }

    double Ratio(double between, int slices)
    {
        var all = courses.FinishOf.Sum(x => Square(x - _mean));
        return all > 0 ? Math.Max(0, between / all - (slices - 1.0) / courses.Count) : 0;
    }

    static double Mean(ReadOnlySpan<float> x)
    {
        var sum = 0.0;
        foreach (var v in x) sum += v;
        return sum / x.Length;
    }

    static double Square(double x) => x * x;
}
