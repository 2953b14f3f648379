namespace WitnessMark.Web.Client.PlanningOffice.Charts;

/// <summary>
/// How wide a line of text is when the font is not known: the advance widths of a wide sans serif, so that in a narrower font there is
/// room to spare and nothing is cut off.
/// </summary>
static class Letters
{
    const double Narrow = 0.36, Usual = 0.62, Wide = 0.9;

    /// <summary>Same unit as the font's size.</summary>
    public static double Width(string text, double fontSize) => fontSize * text.Sum(Advance);

    /// <summary>The text, cut with an ellipsis where it would be wider.</summary>
    public static string Within(string text, double width, double fontSize)
    {
        if (Width(text, fontSize) <= width) return text;
        var kept = text.Length;
        while (kept > 1 && Width($"{text[..kept]}…", fontSize) > width) kept--;
        return $"{text[..kept].TrimEnd()}…";
    }

    static double Advance(char c) => c switch
    {
        'i' or 'j' or 'l' or 'I' or '.' or ',' or ':' or ';' or '|' or '!' or '\'' or ' ' or '(' or ')' => Narrow,
        'm' or 'w' or 'M' or 'W' or '…' or '%' or '@' => Wide,
        >= 'A' and <= 'Z' => 0.7,
        _ => Usual,
    };
}
