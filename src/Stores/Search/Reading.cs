using System.Collections.Immutable;

namespace WitnessMark.Stores;

/// <summary>A place where a word stands: which part (by its place in the index) and which of its texts.</summary>
readonly record struct Posting(int Part, FoundIn In);

/// <summary>A distinct word of the parts.</summary>
/// <param name="Signs">Of the singular.</param>
sealed record Term(string Text, string Singular, uint Signs, ImmutableArray<Posting> Places)
{
    public static Term Of(string text, IEnumerable<Posting> places) =>
        Of(text, Spelling.Singular(text), places);

    static Term Of(string text, string singular, IEnumerable<Posting> places) =>
        new(text, singular, Spelling.Signs(singular), [.. places.Distinct()]);
}

/// <summary>Compares one asked word with the words of the parts.</summary>
sealed class Reading(string asked)
{
    /// <summary>Shorter words would stand within half the list.</summary>
    const int ShortestWithin = 3;

    readonly string _singular = Spelling.Singular(asked);
    readonly uint _signs = Spelling.Signs(Spelling.Singular(asked));
    readonly int _forgiven = Spelling.Forgiven(asked);
    // "3/8" must not be found in 13/8, nor 1.5 in 11.5.
    readonly bool _within = asked.Length >= ShortestWithin && asked.AsSpan().IndexOfAny('/', '.') < 0;

    /// <summary>Null when the word is another one.</summary>
    public Likeness? Of(Term term)
    {
        if (term.Text == asked) return Likeness.Same;
        if (term.Singular == _singular) return Likeness.Number;
        if (term.Text.StartsWith(asked, StringComparison.Ordinal) || term.Text.StartsWith(_singular, StringComparison.Ordinal)) return Likeness.Beginning;
        if (_within && term.Text.Contains(_singular, StringComparison.Ordinal)) return Likeness.Within;
        if (_forgiven == 0 || !Spelling.MayBeWithin(_signs, term.Signs, _forgiven) || term.Text.Any(char.IsDigit)) return null;
        return Spelling.Distance(_singular, term.Singular, _forgiven) switch
        {
            1 => Likeness.OneSlip,
            2 when _forgiven == 2 => Likeness.TwoSlips,
            _ => null,
        };
    }
}
