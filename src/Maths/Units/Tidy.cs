using System.Text;

namespace WitnessMark.Maths.Units;

/// <summary>The many characters for one sign, brought to one: quotes, primes, dashes, spaces, vulgar fractions, plus-or-minus.</summary>
public static class Tidy
{
    const string Fractions = "½1/2 ⅓1/3 ⅔2/3 ¼1/4 ¾3/4 ⅕1/5 ⅖2/5 ⅗3/5 ⅘4/5 ⅙1/6 ⅚5/6 ⅛1/8 ⅜3/8 ⅝5/8 ⅞7/8 ⅒1/10";

    /// <summary>Single spaces, <c>"</c> and <c>'</c> for all quotes and primes, <c>-</c> for all dashes, <c>±</c> for <c>+/-</c>; trimmed.</summary>
    public static string Text(string text)
    {
        var tidy = new StringBuilder(text.Length + 8);
        foreach (var c in text) Add(tidy, c);
        tidy.Replace("''", "\"").Replace("+/-", "±").Replace("+-", "±");
        return string.Join(' ', tidy.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>A vulgar fraction in one sign as people type it, 1/2; null for any other sign.</summary>
    public static string? Fraction(char c)
    {
        var at = char.IsAscii(c) ? -1 : Fractions.IndexOf(c);
        if (at < 0) return null;
        var end = Fractions.IndexOf(' ', at);
        return end < 0 ? Fractions[(at + 1)..] : Fractions[(at + 1)..end];
    }

    static void Add(StringBuilder tidy, char c)
    {
        if (Fraction(c) is { } fraction)
        {
            tidy.Append(' ').Append(fraction);
            return;
        }
        tidy.Append(c switch
        {
            '″' or '”' or '“' or '„' or '‟' or 'ʺ' or '〃' or '＂' or '˝' => '"',
            '′' or '’' or '‘' or '‛' or 'ʹ' or 'ʼ' or '´' or '`' or '＇' => '\'',
            '−' or '–' or '—' or '‐' or '‑' or '－' => '-',
            '⁄' or '∕' or '／' => '/',
            'º' or '˚' => '°',
            _ when char.IsWhiteSpace(c) => ' ',
            _ => c,
        });
    }
}
