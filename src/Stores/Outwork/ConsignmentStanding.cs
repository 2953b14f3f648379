using System.Collections.Immutable;

namespace WitnessMark.Stores.Outwork;

/// <param name="Damage">What was said of those that came back.</param>
public sealed record BoxLine(ConsignmentLine Line, int Back, ImmutableArray<string> Damage)
{
    public int Missing => Math.Max(0, Line.Count - Back);

    public int Over => Math.Max(0, Back - Line.Count);
}

/// <summary>What of a consignment is back and what is not.</summary>
/// <param name="Strays">Returns that name a line the consignment does not have.</param>
public sealed record ConsignmentStanding(Consignment Consignment, ImmutableArray<BoxLine> Lines, ImmutableArray<ConsignmentReturn> Strays)
{
    public bool AllBack => Lines.All(l => l.Missing == 0);

    /// <summary>Something came back, so that what did not is missing and not merely out.</summary>
    public bool BegunToReturn => Lines.Any(l => l.Back > 0);

    public static ConsignmentStanding Of(Consignment consignment, IEnumerable<ConsignmentReturn> standing)
    {
        var ours = standing.Where(r => r.ConsignmentId == consignment.Id).ToLookup(r => r.Line);
        var numbers = consignment.Lines.Select(l => l.Number).ToHashSet();
        return new(consignment,
            [.. consignment.Lines.Select(l => new BoxLine(l, ours[l.Number].Sum(r => r.Count), [.. ours[l.Number].Select(r => r.Damage).Where(d => d.Trim().Length > 0)]))],
            [.. ours.Where(g => !numbers.Contains(g.Key)).SelectMany(g => g)]);
    }

    /// <summary>A sentence for each thing that is not as it should be; first how the whole stands.</summary>
    public ImmutableArray<string> Words(DateOnly today) =>
    [
        Whole(today),
        .. BegunToReturn ? Lines.Where(l => l.Missing > 0).Select(l => $"Missing on return: {l.Missing} of {l.Line.Count} {l.Line.What}; ask before the firm clears its bench.") : [],
        .. Lines.Where(l => l.Over > 0).Select(l => $"{l.Over} {l.Line.What} more came back than went out: look whose they are."),
        .. Lines.SelectMany(l => l.Damage.Select(d => $"{l.Line.What}: {d}.")),
        .. Strays.Select(s => $"A return names line {s.Line}, which is not on the list: {s.Count} came back."),
    ];

    string Whole(DateOnly today)
    {
        var (went, back) = (Lines.Sum(l => l.Line.Count), Lines.Sum(l => Math.Min(l.Back, l.Line.Count)));
        if (AllBack) return $"All {went} are back.";
        var late = Consignment.ExpectedBack is { } due ? (today.DayNumber - due.DayNumber) switch
        {
            > 0 and var n => $"; expected on {due:yyyy-MM-dd}, {n} {(n == 1 ? "day" : "days")} ago",
            _ => $"; expected on {due:yyyy-MM-dd}",
        } : "; no date was given";
        return $"{back} of {went} are back{late}.";
    }
}
