using System.Collections.Immutable;

namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>Everything that lies in the tray of this device.</summary>
public sealed record Lying(
    ImmutableSortedDictionary<string, Unsent> Entries, ImmutableSortedDictionary<string, Unsaved> Decisions,
    ImmutableSortedDictionary<string, UnsentPicture> Pictures, ImmutableSortedDictionary<string, Sent> Sent)
{
    public static readonly Lying Nothing = Of([], [], [], []);

    public static Lying Of(IEnumerable<Unsent> entries, IEnumerable<Unsaved> decisions, IEnumerable<UnsentPicture> pictures, IEnumerable<Sent> sent) => new(
        By(entries, e => e.Key), By(decisions, d => d.Address), By(pictures, p => p.Id), By(sent, s => s.Key));

    /// <summary>What can be sent, and what a person must look at first.</summary>
    public int Waiting => Entries.Values.Count(e => e.Refusal is null) + Decisions.Values.Count(d => !d.NeedsYou) + Pictures.Values.Count(p => p.Refusal is null);

    public int NeedYou => Entries.Values.Count(e => e.Refusal is not null) + Decisions.Values.Count(d => d.NeedsYou) + Pictures.Values.Count(p => p.Refusal is not null);

    /// <summary>The same after a change of the shelf.</summary>
    public Lying After(Shift shift)
    {
        var (entries, decisions, pictures, sent) = (Entries.ToBuilder(), Decisions.ToBuilder(), Pictures.ToBuilder(), Sent.ToBuilder());
        foreach (var e in shift.Entries) entries[e.Key] = e;
        foreach (var d in shift.Decisions) decisions[d.Address] = d;
        foreach (var s in shift.Sent) sent[s.Key] = s;
        foreach (var (store, key) in shift.Drops)
            _ = store switch
            {
                Shift.EntryStore => entries.Remove(key),
                Shift.DecisionStore => decisions.Remove(key),
                Shift.PictureStore => pictures.Remove(key),
                _ => sent.Remove(key),
            };
        return new(entries.ToImmutable(), decisions.ToImmutable(), pictures.ToImmutable(), sent.ToImmutable());
    }

    static ImmutableSortedDictionary<string, T> By<T>(IEnumerable<T> rows, Func<T, string> key) =>
        rows.GroupBy(key).ToImmutableSortedDictionary(g => g.Key, g => g.Last(), StringComparer.Ordinal);
}

/// <summary>A change of the shelf: all of it or nothing.</summary>
public sealed record Shift
{
    public const string EntryStore = "entries", DecisionStore = "decisions", SentStore = "sent", PictureStore = "pictures";

    public ImmutableArray<Unsent> Entries { get; init; } = [];

    public ImmutableArray<Unsaved> Decisions { get; init; } = [];

    public ImmutableArray<Sent> Sent { get; init; } = [];

    public ImmutableArray<(string Store, string Key)> Drops { get; init; } = [];
}
