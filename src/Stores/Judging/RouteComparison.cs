using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Judging;

/// <summary>One route beside the others.</summary>
/// <param name="ReadyBy">The likely day: waiting first, then the own hours at the person's pace; null when the hours are not known.</param>
/// <param name="ReadyEarly">The same with everything at its low.</param>
/// <param name="ReadyLate">The same with everything at its high.</param>
/// <param name="Beaten">Why another route is better in every way; null when none is.</param>
public sealed record RouteRow(RouteOutlook Outlook, DateOnly? ReadyEarly, DateOnly? ReadyBy, DateOnly? ReadyLate, string? Beaten);

/// <summary>The six routes of one part side by side. It ranks nothing: the person decides.</summary>
public sealed record RouteComparison(string PartName, string Currency, DateOnly On, double HoursAWeek, ImmutableArray<RouteRow> Rows)
{
    /// <param name="outlooks">Each route once.</param>
    /// <param name="hoursAWeek">That the person gives the vehicle; above 0.</param>
    /// <exception cref="RefusedException">Figures fall, are negative or leave their range.</exception>
    public static RouteComparison Of(string partName, string currency, DateOnly on, double hoursAWeek, IReadOnlyList<RouteOutlook> outlooks)
    {
        if (hoursAWeek is not (> 0 and <= 168)) throw new RefusedException(Refusal.Of("hours a week", $"{hoursAWeek}", "give a number above 0, at most 168"));
        if (outlooks.Select(Wrong).FirstOrDefault(w => w is not null) is { } wrong) throw new RefusedException(wrong);
        DateOnly? Ready(Estimate? hours, Estimate wait, Func<Estimate, double> of) =>
            hours is null ? null : on.AddDays((int)Math.Ceiling(Math.Min(of(wait) + of(hours) / hoursAWeek * 7, 36_500)));
        return new(partName, currency, on, hoursAWeek,
            [.. outlooks.Select(o => new RouteRow(o, Ready(o.Hours, o.WaitDays, e => e.Low), Ready(o.Hours, o.WaitDays, e => e.Likely), Ready(o.Hours, o.WaitDays, e => e.High), Beaten(o, outlooks, hoursAWeek)))]);
    }

    static Refusal? Wrong(RouteOutlook o)
    {
        foreach (var (field, estimate) in new[] { ("hours", o.Hours), ("money", o.Money), ("days of waiting", o.WaitDays) })
            if (estimate is { Rises: false } e) return Refusal.Of($"{field} to {o.Route.Words()}", $"{e.Low}, {e.Likely}, {e.High}", "low, likely and high must rise from 0 up");
        foreach (var (field, score) in new[] { ("certainty", o.Certainty), ("originality", o.Originality) })
            if (score.Value is not (>= 0 and <= 1)) return Refusal.Of($"{field} of {o.Route.Words()}", $"{score.Value}", "give a figure from 0 to 1");
        return null;
    }

    /// <summary>A route is beaten when another is at least as good by every measure and better by one (Pareto). Only fully known routes are weighed.</summary>
    static string? Beaten(RouteOutlook route, IEnumerable<RouteOutlook> all, double hoursAWeek)
    {
        if (!route.Known) return null;
        var mine = Measures(route, hoursAWeek);
        foreach (var other in all.Where(o => o.Known && o.Route != route.Route))
        {
            var theirs = Measures(other, hoursAWeek);
            if (!mine.Zip(theirs).All(p => p.Second.Bad <= p.First.Bad)) continue;
            var better = mine.Zip(theirs).Where(p => p.Second.Bad < p.First.Bad).Select(p => p.First.Name).ToList();
            if (better.Count > 0)
                return $"To {other.Route.Words()} is better by {Listed(better)} and worse by nothing.";
        }
        return null;
    }

    static (string Name, double Bad)[] Measures(RouteOutlook o, double hoursAWeek) =>
    [
        ("hours", o.Hours!.Expected), ("money", o.Money!.Expected), ("date", o.WaitDays.Expected + o.Hours.Expected / hoursAWeek * 7),
        ("certainty", -o.Certainty.Value), ("originality", -o.Originality.Value),
    ];

    static string Listed(List<string> names) => names.Count == 1 ? names[0] : $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}";
}
