using System.Collections.Immutable;

namespace WitnessMark.Stores;

/// <summary>
/// Parts made ready for searching by words that may be misspelt, half-typed, in any order or number. Every distinct word of the
/// parts is held once with the texts it stands in; an asked word is compared with each of them (<see cref="Reading"/>), and the
/// parts that hold the most asked words are ranked by how near each word came and in which text it stands. The same parts and
/// words give the same answer whatever order they came in, as long as their ids differ.
/// </summary>
public sealed class PartIndex
{
    /// <summary>Words of a search beyond this many are left unread.</summary>
    public const int MostWords = 12;

    const double NameFilled = 0.05;

    readonly ImmutableArray<PartWords> _parts;
    readonly ImmutableArray<Term> _terms;
    readonly ImmutableArray<int> _nameWords;

    PartIndex(ImmutableArray<PartWords> parts, ImmutableArray<Term> terms, ImmutableArray<int> nameWords) =>
        (_parts, _terms, _nameWords) = (parts, terms, nameWords);

    public static PartIndex Of(IEnumerable<PartWords> parts)
    {
        ImmutableArray<PartWords> all = [.. parts];
        var places = new Dictionary<string, List<Posting>>(StringComparer.Ordinal);
        var nameWords = ImmutableArray.CreateBuilder<int>(all.Length);
        for (var i = 0; i < all.Length; i++)
        {
            nameWords.Add(Words.Of(all[i].Part.Name).Count);
            foreach (var text in Texts.All)
                foreach (var word in Texts.WordsOf(all[i], text))
                {
                    if (!places.TryGetValue(word.Term, out var held)) places.Add(word.Term, held = []);
                    held.Add(new(i, text));
                }
        }
        return new(all, [.. places.Select(p => Term.Of(p.Key, p.Value))], nameWords.MoveToImmutable());
    }

    /// <param name="words">As typed. Nothing that can be read as a word finds nothing.</param>
    /// <param name="most">Answers wanted, best first.</param>
    public ImmutableArray<Found> Find(string words, int most = 50)
    {
        string[] asked = [.. Words.Of(words).Select(w => w.Term).Distinct().Take(MostWords)];
        var hits = asked.Select(Hits).ToArray();
        var held = Enumerable.Range(0, _parts.Length).Select(part => hits.Count(h => h[part].Worth > 0)).ToArray();
        var best = held.DefaultIfEmpty().Max();
        if (best == 0) return [];
        return [.. Enumerable.Range(0, _parts.Length).Where(part => held[part] == best)
            .Select(part => (Part: part, Score: Score(hits, part)))
            .OrderByDescending(f => f.Score).ThenBy(f => _parts[f.Part].Part, ByName)
            .Take(most).Select(f => new Found(_parts[f.Part], f.Score, Why(asked, hits, f.Part)))];
    }

    /// <summary>For each part the best place of an asked word.</summary>
    Hit[] Hits(string asked)
    {
        var best = new Hit[_parts.Length];
        var reading = new Reading(asked);
        foreach (var term in _terms)
        {
            if (reading.Of(term) is not { } likeness) continue;
            foreach (var (part, text) in term.Places)
            {
                var worth = Texts.Worth(likeness) * Texts.Worth(text);
                if (worth > best[part].Worth || worth == best[part].Worth && worth > 0 && string.CompareOrdinal(term.Text, best[part].Term) < 0)
                    best[part] = new(worth, term.Text, text, likeness);
            }
        }
        return best;
    }

    /// <summary>The mean worth of the asked words, and a little for a name that they fill.</summary>
    double Score(Hit[][] hits, int part)
    {
        var inName = hits.Count(h => h[part] is { Worth: > 0, In: FoundIn.Name });
        return hits.Sum(h => h[part].Worth) / hits.Length + NameFilled * Math.Min(1, inName / Math.Max(1.0, _nameWords[part]));
    }

    ImmutableArray<FoundWord> Why(string[] asked, Hit[][] hits, int part) =>
        [.. asked.Zip(hits, (word, hit) => (word, Hit: hit[part])).Where(w => w.Hit.Worth > 0).Select(w =>
        {
            var place = Texts.WordsOf(_parts[part], w.Hit.In).First(t => t.Term == w.Hit.Term);
            return new FoundWord(w.word, w.Hit.In, w.Hit.As, Texts.Of(_parts[part], w.Hit.In), place.Start, place.Length);
        })];

    static readonly Comparer<Part> ByName = Comparer<Part>.Create((a, b) =>
        string.CompareOrdinal(a.Name.ToLowerInvariant(), b.Name.ToLowerInvariant()) is not 0 and var name ? name
        : a.Hand != b.Hand ? a.Hand.CompareTo(b.Hand)
        : string.CompareOrdinal(a.Reference, b.Reference) is not 0 and var reference ? reference
        : a.Id.CompareTo(b.Id));

    readonly record struct Hit(double Worth, string Term, FoundIn In, Likeness As);
}
