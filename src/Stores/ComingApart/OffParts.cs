using System.Collections.Immutable;

namespace WitnessMark.Stores.ComingApart;

/// <summary>What the entries of one part say together.</summary>
/// <param name="OffAt">The last time it came off.</param>
public sealed record OffPart(
    Guid PartId, DateTimeOffset OffAt, string Tag, string Bag, ImmutableArray<FastenerCount> Fasteners, ImmutableArray<ShimPack> Shims,
    string WayRound, string WitnessMarks, ImmutableArray<string> Pictures, ImmutableArray<string> Notes, ImmutableArray<Guid> After);

public static class OffParts
{
    /// <summary>One of each part that came off; in the order they last did, by the clock and then by arrival.</summary>
    public static ImmutableArray<OffPart> Of(IEnumerable<CameOff> standing) =>
        [.. standing.GroupBy(c => c.PartId).Select(g => Together([.. g.OrderBy(c => c.At)])).OrderBy(o => o.OffAt)];

    static OffPart Together(ImmutableArray<CameOff> entries)
    {
        string Last(Func<CameOff, string> said) => entries.Select(said).LastOrDefault(s => s.Trim().Length > 0, "");
        ImmutableArray<T> LastList<T>(Func<CameOff, ImmutableArray<T>> listed) => entries.Select(listed).LastOrDefault(l => !l.IsEmpty, []);
        return new(
            entries[0].PartId, entries[^1].At, Last(c => c.Tag), Last(c => c.Bag), LastList(c => c.Fasteners), LastList(c => c.Shims),
            Last(c => c.WayRound), Last(c => c.WitnessMarks),
            [.. entries.SelectMany(c => c.Pictures).Distinct()],
            [.. entries.Select(c => c.Note).Where(n => n.Trim().Length > 0)],
            [.. entries.SelectMany(c => c.After).Distinct()]);
    }
}
