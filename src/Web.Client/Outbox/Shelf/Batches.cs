using System.Collections.Immutable;

namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>What waits, cut into sendings and spelled as it travels.</summary>
static class Batches
{
    /// <summary>Runs of one kind and address, in the order that entries lean on each other and were made.</summary>
    public static IEnumerable<ImmutableArray<Unsent>> Of(IEnumerable<Unsent> entries) =>
        from rank in entries.GroupBy(e => Kinds.Rank(e.Kind)).OrderBy(g => g.Key)
        from address in rank.GroupBy(e => e.Address)
        from batch in Cut(address)
        select batch;

    public static string Body(ImmutableArray<Unsent> batch) => $"[{string.Join(',', batch.Select(e => e.Text))}]";

    public static string Body(string row, int basedOn) => $"{{\"row\":{row},\"basedOn\":{basedOn}}}";

    static IEnumerable<ImmutableArray<Unsent>> Cut(IEnumerable<Unsent> entries)
    {
        var batch = ImmutableArray.CreateBuilder<Unsent>();
        var text = 0;
        foreach (var entry in entries)
        {
            if (batch.Count == Kinds.MostAtOnce || (batch.Count > 0 && text + entry.Text.Length > Kinds.MostText))
            {
                yield return batch.ToImmutable();
                batch.Clear();
                text = 0;
            }
            batch.Add(entry);
            text += entry.Text.Length;
        }
        if (batch.Count > 0) yield return batch.ToImmutable();
    }
}
