using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.Web.Client.Shell.Finding;

/// <summary>Something that can be found and gone to.</summary>
/// <param name="Group">Under which heading it is shown.</param>
/// <param name="Name">What it is called; it weighs most.</param>
/// <param name="Beside">Shown beside it: where it belongs.</param>
/// <param name="Other">Further words that it may be found by; a few of them are shown when one was.</param>
/// <param name="Address">Where it leads to; one that begins with a colon is a command of the frame.</param>
public sealed record Findable(string Group, string Name, string Beside, string Other, string Address);

/// <summary>A find, and why it was found when the name does not say so.</summary>
public sealed record Hit(Findable Of, string Why);

/// <summary>
/// All that can be found of one vehicle and of the app. The parts' own index does the reading of misspelt words: each thing is
/// given to it as a part of that name, with the place it belongs to as its system and everything else as other text.
/// </summary>
public sealed class FindIndex
{
    readonly ImmutableArray<Findable> _all;
    readonly PartIndex _index;
    readonly Dictionary<Guid, int> _at;

    FindIndex(ImmutableArray<Findable> all, PartIndex index, Dictionary<Guid, int> at) => (_all, _index, _at) = (all, index, at);

    public static FindIndex Of(IEnumerable<Findable> things)
    {
        ImmutableArray<Findable> all = [.. things];
        var at = new Dictionary<Guid, int>(all.Length);
        var words = all.Select((thing, n) =>
        {
            var id = Number(n);
            at.Add(id, n);
            return new PartWords(new(id, Guid.Empty, thing.Name, "", Hand.None, 1, "", null), thing.Beside, "", thing.Other);
        }).ToList();
        return new(all, PartIndex.Of(words), at);
    }

    /// <summary>The best of each group, groups in the order of their best. Misspelt readings are offered only where nothing is spelt as asked.</summary>
    public ImmutableArray<Hit> Find(string words, int mostOfGroup = 6, int most = 200)
    {
        var found = _index.Find(words, most);
        var sound = found.Where(f => f.Words.All(w => w.As is not (Likeness.OneSlip or Likeness.TwoSlips))).ToImmutableArray();
        return Grouped(sound.IsEmpty ? found : sound, mostOfGroup);
    }

    ImmutableArray<Hit> Grouped(ImmutableArray<Found> found, int mostOfGroup) =>
    [
        .. found.Select((f, rank) => (Hit: new Hit(_all[_at[f.Of.Part.Id]], Why(f)), Rank: rank))
            .GroupBy(h => h.Hit.Of.Group).OrderBy(g => g.Min(h => h.Rank)).SelectMany(g => g.Take(mostOfGroup).Select(h => h.Hit)),
    ];

    static string Why(Found found) => string.Join(", ", found.Words.Where(w => w.As is not (Likeness.Same or Likeness.Beginning) || w.In is FoundIn.Other).Select(Why));

    static string Why(FoundWord word)
    {
        var written = word.Text.Substring(word.Start, word.Length);
        return word.In is FoundIn.Other ? $"“{Around(word)}”" : $"“{word.Asked}” read as “{written}”";
    }

    /// <summary>The word with a little of what stands round it.</summary>
    static string Around(FoundWord word)
    {
        const int Each = 24;
        var (from, to) = (Math.Max(0, word.Start - Each), Math.Min(word.Text.Length, word.Start + word.Length + Each));
        return $"{(from > 0 ? "…" : "")}{word.Text[from..to].Trim()}{(to < word.Text.Length ? "…" : "")}";
    }

    static Guid Number(int n) => new(n + 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
}
