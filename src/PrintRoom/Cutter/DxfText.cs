using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace WitnessMark.PrintRoom.Cutter;

/// <summary>Text and names as an R12 file spells them, in plain ASCII.</summary>
static class DxfText
{
    /// <summary>Signs that ASCII has a plain equal for; readers of R12 differ in whether they know letters by number.</summary>
    static readonly FrozenDictionary<char, string> s_plain = new Dictionary<char, string>
    {
        ['×'] = "x", ['–'] = "-", ['—'] = "-", ['−'] = "-", ['\u2011'] = "-", ['⁄'] = "/", ['′'] = "'", ['″'] = "\"", ['‘'] = "'", ['’'] = "'",
        ['“'] = "\"", ['”'] = "\"", ['…'] = "...", ['\u00A0'] = " ", ['\u2009'] = " ", ['\u202F'] = " ",
        ['½'] = "1/2", ['¼'] = "1/4", ['¾'] = "3/4", ['⅛'] = "1/8", ['⅜'] = "3/8", ['⅝'] = "5/8", ['⅞'] = "7/8",
    }.ToFrozenDictionary();

    /// <summary>⌀ ° ± by the codes that every reader knows, common signs by their plain equals, the rest beyond ASCII by number.</summary>
    public static string Of(string text)
    {
        var spelled = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (!s_plain.TryGetValue(c, out var plain)) plain = Coded(c, i + 1 < text.Length ? text[i + 1] : ' ');
            // 3½ must not become 31/2.
            else if (char.IsAsciiDigit(plain[0]) && i > 0 && char.IsAsciiDigit(text[i - 1])) plain = " " + plain;
            spelled.Append(plain);
        }
        return spelled.ToString();
    }

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
