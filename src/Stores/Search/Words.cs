using System.Text;
using WitnessMark.Maths.Units;

namespace WitnessMark.Stores;

/// <summary>A word of a text as it is compared, and where it stands (characters).</summary>
readonly record struct Word(string Term, int Start, int Length);

/// <summary>Splits text into words. Fractions and decimals stay whole (3/8, 1.25); L.H. and N/S become lh and ns; ½ becomes 1/2.</summary>
static class Words
{
    public static List<Word> Of(string text)
    {
        var words = new List<Word>();
        var term = new StringBuilder();
        var (start, end) = (0, 0);
        void Close()
        {
            if (term.Length > 0) words.Add(new(term.ToString(), start, end - start));
            term.Clear();
        }
        for (var i = 0; i < text.Length; i++)
        {
            if (Letters.IsMark(text[i]) && term.Length > 0) end = i + 1;
            else if (Tidy.Fraction(text[i]) is { } fraction)
            {
                Close();
                words.Add(new(fraction, i, 1));
            }
            else if (Letters.Small(text[i]) is var c && char.IsLetterOrDigit(c))
            {
                if (term.Length == 0) start = i;
                term.Append(c);
                end = i + 1;
            }
            else if (!Joins(text, i, c, term)) Close();
            else if (char.IsAsciiDigit(text[i - 1])) term.Append(c);
        }
        Close();
        return words;
    }

    /// <summary>Neighbours written as one: "head lamp" is also found as headlamp, Q12-1041 as Q121041.</summary>
    public static IEnumerable<Word> Joined(IReadOnlyList<Word> words) =>
        words.Zip(words.Skip(1), (a, b) => new Word(a.Term + b.Term, a.Start, b.Start + b.Length - a.Start));

    static bool Joins(string text, int at, char sign, StringBuilder before)
    {
        if (sign is not ('/' or '.') || before.Length == 0 || at + 1 >= text.Length) return false;
        var (last, next) = (text[at - 1], text[at + 1]);
        if (char.IsAsciiDigit(last)) return char.IsAsciiDigit(next);
        var nextStandsAlone = at + 2 >= text.Length || !char.IsLetterOrDigit(text[at + 2]);
        var lastStandsAlone = at < 2 || !char.IsLetterOrDigit(text[at - 2]);
        return char.IsLetter(last) && char.IsLetter(next) && lastStandsAlone && nextStandsAlone;
    }
}
