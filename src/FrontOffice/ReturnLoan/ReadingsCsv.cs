using System.Globalization;
using System.Text;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>
/// All that was ever written of a sample, as typed, the withdrawn too: a table for a spreadsheet (RFC 4180, every cell quoted). A
/// cell that a spreadsheet would run as a formula gets an apostrophe before it, as in the wants list.
/// </summary>
static class ReadingsCsv
{
    /// <summary>UTF-8 with a byte-order mark, for without it common spreadsheets misread every letter beyond ASCII.</summary>
    public static byte[] Write(ReadingHistory history)
    {
        var withdrawn = history.Withdrawals.GroupBy(w => w.ReadingId).ToDictionary(g => g.Key, g => g.First());
        var text = Line("number", "reading", "from", "to", "value as read", "plus or minus", "read with", "note", "taken at", "withdrawn", "why")
            + string.Concat(history.Readings.Select((r, i) => Row(i + 1, r, withdrawn.GetValueOrDefault(r.Id))));
        return [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)];
    }

    static string Row(int number, ReadingEntry r, Withdrawal? gone) => Line(
        number.ToString(CultureInfo.InvariantCulture), r.Kind, r.From, r.To, r.Value, r.PlusMinus, r.Instrument, r.Note, Time(r.TakenAt), gone is null ? "" : Time(gone.At), gone?.Reason ?? "");

    static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    static string Line(params IEnumerable<string> cells) => string.Join(',', cells.Select(Cell)) + "\r\n";

    static string Cell(string text)
    {
        var harmless = text is ['=' or '+' or '-' or '@' or '＝' or '＋' or '－' or '＠' or '\t' or '\r', ..] ? "'" + text : text;
        return $"\"{harmless.Replace("\"", "\"\"")}\"";
    }
}
