using System.Collections.Immutable;

namespace WitnessMark.Stores.Orders;

/// <summary>One borrowed sample that is still here.</summary>
/// <param name="StillMissing">Readings on its list that have not been taken.</param>
public sealed record BorrowedSample(PartSample Sample, string PartName, int StillMissing)
{
    public Loan Loan => Sample.Loan!;

    public bool ReadyToGo => StillMissing == 0;
}

/// <summary>What one lender lent.</summary>
/// <param name="Samples">The one due first comes first.</param>
public sealed record LenderView(string Lender, ImmutableArray<BorrowedSample> Samples)
{
    public int Overdue(DateOnly today) => Samples.Count(s => s.Loan.DaysLeft(today) < 0);

    /// <summary>What to do about this lender, in a sentence or two.</summary>
    public string Words(DateOnly today)
    {
        var late = Samples.Where(s => s.Loan.DaysLeft(today) < 0).ToList();
        var (go, measure) = (late.Where(s => s.ReadyToGo).ToList(), late.Where(s => !s.ReadyToGo).ToList());
        var sentences = new List<string>();
        if (go.Count > 0) sentences.Add($"Send back now, overdue and all read: {List(go)}.");
        if (measure.Count > 0) sentences.Add($"Overdue with readings still missing: {List(measure)}. Take them, or ask for more time.");
        var free = Samples.Except(late).Where(s => s.ReadyToGo).ToList();
        if (free.Count > 0) sentences.Add($"All read, can go back: {List(free)}.");
        if (Samples.Except(late).FirstOrDefault(s => !s.ReadyToGo) is { } next)
            sentences.Add($"Next to measure: {next.PartName}, due back on {next.Loan.Due:yyyy-MM-dd}, {next.StillMissing} {(next.StillMissing == 1 ? "reading" : "readings")} missing.");
        return string.Join(' ', sentences);
    }

    static string List(IEnumerable<BorrowedSample> samples) => string.Join(", ", samples.Select(s => s.PartName));
}

public static class Lenders
{
    /// <summary>All that is still borrowed, by lender; the lender with the earliest due date comes first.</summary>
    /// <param name="missing">How many readings a sample still lacks, by its id.</param>
    public static ImmutableArray<LenderView> Of(
        IEnumerable<PartSample> samples, IEnumerable<GivenBack> back, Func<Guid, string> partName, Func<Guid, int> missing)
    {
        var gone = back.Select(b => b.SampleId).ToHashSet();
        return
        [
            .. samples.Where(s => s.Loan is not null && !gone.Contains(s.Id))
                .Select(s => new BorrowedSample(s, partName(s.PartId), missing(s.Id)))
                .GroupBy(b => b.Loan.Lender.Trim(), StringComparer.OrdinalIgnoreCase)
                .Select(g => new LenderView(g.Key, [.. g.OrderBy(b => b.Loan.Due).ThenBy(b => b.PartName, StringComparer.Ordinal)]))
                .OrderBy(v => v.Samples[0].Loan.Due).ThenBy(v => v.Lender, StringComparer.Ordinal),
        ];
    }
}
