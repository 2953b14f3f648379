using System.Globalization;

namespace WitnessMark.Stores;

/// <summary>
/// A wants list as a table (RFC 4180, every cell quoted). A cell that a spreadsheet would run as a formula, one that begins with
/// = + - or @ (wide forms too), gets an apostrophe before it: it stays text.
/// </summary>
public static class WantsCsv
{
    public const string Head = "part,hand,quantity,reference,wanted,made to,condition";

    public static string Write(WantsList list) =>
        string.Concat(list.Wants.Select(Row).Prepend(Line(Head.Split(','))));

    static string Row(Want want) => Line(
        want.What, want.Hand == Hand.None ? "" : want.Hand.ToString(), want.Quantity.ToString(CultureInfo.InvariantCulture),
        want.Reference, WantsWords.Of(want.As), want.MadeTo, want.Condition);

    static string Line(params IEnumerable<string> cells) => string.Join(',', cells.Select(Cell)) + "\r\n";

    static string Cell(string text)
    {
        var clean = WantsWords.Clean(text);
        var harmless = clean is ['=' or '+' or '-' or '@' or '＝' or '＋' or '－' or '＠', ..] ? "'" + clean : clean;
        return $"\"{harmless.Replace("\"", "\"\"")}\"";
    }
}
