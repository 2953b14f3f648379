using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.Cli.Planning;

/// <summary>A forecast in words and in figures.</summary>
static class ForecastWords
{
    public static object Figures(Completion done) => new
    {
        Mean = done.Time.Mean.Value,
        done.Time.Sd,
        P10 = done.Time.P10.Value,
        P50 = done.Time.P50.Value,
        P90 = done.Time.P90.Value,
        done.Criticality,
        done.Time.Futures,
        StandardError = new { Mean = done.Time.Mean.Std, P10 = done.Time.P10.Std, P50 = done.Time.P50.Std, P90 = done.Time.P90.Std },
    };

    public static object Figures(PlanForecast f) => new
    {
        Jobs = f.Bars.Length,
        f.Futures,
        f.Today,
        f.Finish,
        f.Unfinished,
        f.Milestones,
        f.Hours,
        f.Money,
        f.Cash,
        f.Bars,
        f.Drivers,
        f.Discoveries,
        f.InWords,
        f.Cautions,
    };

    public static void Show(TextWriter to, Completion done)
    {
        to.WriteLine($"completion: {Spread(done.Time, "0.00")}; mean {done.Time.Mean.Value:0.00}, sd {done.Time.Sd:0.00}, {done.Time.Futures} futures");
        foreach (var (id, share) in done.Criticality.OrderByDescending(c => c.Value)) to.WriteLine($"{share,6:0.0%}  {id}");
    }

    public static void Show(TextWriter to, PlanForecast f)
    {
        to.WriteLine($"{f.Bars.Length} open {(f.Bars.Length == 1 ? "job" : "jobs")}, {f.Futures} futures from {f.Today:yyyy-MM-dd}");
        to.WriteLine($"finish: {Days(f.Finish)}");
        foreach (var m in f.Milestones)
            to.WriteLine($"{m.Name}: {Days(m.Reached)}{(m.OddsInTime is { } odds ? $"; by {m.Wanted:yyyy-MM-dd}: {odds:0%}" : "")}");
        to.WriteLine($"hours: {Spread(f.Hours, "0.0")}");
        to.WriteLine($"{f.Cash.Currency}: {Spread(f.Money, "0.00")}");
        if (f.Cash.Limited) to.WriteLine($"money runs dry: {f.Cash.OddsOfDry:0%}{(f.Cash.Dry is { } dry ? $", {Days(dry)}" : "")}");
        foreach (var line in f.InWords) to.WriteLine($"- {line}");
        var looks = f.Discoveries.Where(d => d.DaysIfFound is not null && d.Tail.Known < d.Tail.Now).ToList();
        foreach (var d in looks.Take(MostLooks))
            to.WriteLine($"look: {d.Words}, {d.Odds:0%}: {d.LookHours:0.0} h; P90 - P50 from {d.Tail.Now:0} to {d.Tail.Known:0} days once it is known");
        if (looks.Count > MostLooks) to.WriteLine($"      and {looks.Count - MostLooks} more that tell less; --json lists all.");
        foreach (var caution in f.Cautions) to.WriteLine($"! {caution}");
    }

    /// <summary>As many things to look at first as a person reads.</summary>
    const int MostLooks = 8;

    static string Days(DateSpread d) => $"P10 {d.P10:yyyy-MM-dd}, P50 {d.P50:yyyy-MM-dd}, P90 {d.P90:yyyy-MM-dd} (± {d.Days.P90.Std:0.0} days of the simulation at P90)";

    static string Spread(Spread s, string format) =>
        $"P10 {s.P10.Value.ToString(format)}, P50 {s.P50.Value.ToString(format)}, P90 {s.P90.Value.ToString(format)} (± {s.P90.Std.ToString(format)} of the simulation at P90)";
}
