using System.Globalization;
using System.Text;

namespace WitnessMark.PrintRoom.Cutter;

/// <summary>Text and names as an R12 file spells them, in plain ASCII.</summary>
static class DxfText
{
    /// <summary>⌀ ° ± by the codes that every reader knows, common signs by their plain equals, the rest beyond ASCII by number.</summary>
    public static string Of(string text)
    {
        var spelled = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            // 3½ must not become 31/2.
            if (i > 0 && char.IsAsciiDigit(text[i - 1]) && Plain(text[i]) is ['1' or '3' or '5' or '7', ..]) spelled.Append(' ');
            spelled.Append(Plain(text[i]) ?? Coded(text[i], i + 1 < text.Length ? text[i + 1] : ' '));
        }
        return spelled.ToString();
    }

    /// <summary>Signs that ASCII has a plain equal for; readers of R12 differ in whether they know letters by number.</summary>
    static string? Plain(char c) => c switch
    {
        '×' => "x",
        '–' or '—' or '−' or '\u2011' => "-",
        '⁄' => "/",
        '′' or '‘' or '’' => "'",
        '″' or '“' or '”' => "\"",
        '…' => "...",
        '\u00A0' or '\u2009' or '\u202F' => " ",
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        _ => null,
    };

    static string Coded(char c, char next) => c switch
    {
        '⌀' => "%%c",
        '°' => "%%d",
        '±' => "%%p",
        // Two in a row would begin a code.
        '%' when next == '%' => "%%%",
        '^' => "^ ",
        < ' ' => " ",
        > '~' => $"\\U+{(int)c:X4}",
        _ => c.ToString(),
    };

    /// <summary>A layer's name: capitals, digits, - and _, at most 31.</summary>
    public static string Layer(string name)
    {
        var plain = string.Concat(name.ToUpper(CultureInfo.InvariantCulture).Select(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '-' ? c : '_'));
        return plain.Length is > 0 and <= 31 ? plain : plain.Length == 0 ? "0" : plain[..31];
    }
}
