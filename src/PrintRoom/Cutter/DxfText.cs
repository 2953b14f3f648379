using System.Globalization;
using System.Text;

namespace WitnessMark.PrintRoom.Cutter;

/// <summary>Text and names as an R12 file spells them, in plain ASCII.</summary>
static class DxfText
{
    /// <summary>⌀ ° ± by the codes that every reader knows; what is beyond ASCII by its number.</summary>
    public static string Of(string text)
    {
        var spelled = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
            spelled.Append(text[i] switch
            {
                '⌀' => "%%c",
                '°' => "%%d",
                '±' => "%%p",
                // Two in a row would begin a code.
                '%' when i + 1 < text.Length && text[i + 1] == '%' => "%%%",
                '^' => "^ ",
                < ' ' => " ",
                > '~' => $"\\U+{(int)text[i]:X4}",
                var c => c.ToString(),
            });
        return spelled.ToString();
    }

    /// <summary>A layer's name: capitals, digits, - and _, at most 31.</summary>
    public static string Layer(string name)
    {
        var plain = string.Concat(name.ToUpper(CultureInfo.InvariantCulture).Select(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '-' ? c : '_'));
        return plain.Length is > 0 and <= 31 ? plain : plain.Length == 0 ? "0" : plain[..31];
    }
}
