using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.PractiseMeasuring;

/// <summary>
/// A measured practice sheet as a typed file: a row <c>sheet</c> with its number, then the readings under the headings of a reading sheet. A reading
/// without a value is one still to be taken.
/// </summary>
public static class PracticeFile
{
    static readonly Dictionary<string, string[]> Tables = new() { ["kind"] = ["from", "to", "value", "instrument", "note"] };

    public static Parsed<PracticeRequest> Read(string text)
    {
        try
        {
            int? number = null;
            SheetTable? table = null;
            var readings = ImmutableArray.CreateBuilder<PracticeReading>();
            foreach (var row in SheetRows.Read(text, Tables.Keys))
            {
                var place = new Place(row.Line);
                if (SheetTable.Opened(row, Tables) is { } opened) table = opened;
                else if (table is not null)
                {
                    var cells = new SheetCells(table, row);
                    if (readings.Count == TextFile.MostReadings) throw place.Refuse("readings", $"{TextFile.MostReadings + 1}", $"at most {TextFile.MostReadings} can be compared together");
                    if (cells["value"].Length > 0) readings.Add(new(cells.First, cells["from"], cells["to"], cells["value"], cells["instrument"]));
                }
                else if (row.Cell(0).ToLowerInvariant() == "sheet")
                    number = int.TryParse(row.Cell(1), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : throw place.Refuse("sheet", row.Cell(1), "give the number that is printed on it");
                else throw place.Refuse("first cell", row.Cell(0), "before the readings comes a row sheet with its number; the readings begin with a heading row that begins with kind");
            }
            return new PracticeRequest(number ?? throw Place.None.Refuse("sheet", null, "begin with a row sheet and the number that is printed on it, such as sheet,17"), readings.ToImmutable());
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    /// <summary>The list to be filled in: every wanted reading with an empty value; those that are taken with theirs.</summary>
    /// <param name="instrument">For the readings still to be taken.</param>
    public static string Write(PracticeRequest request, string instrument = "calliper")
    {
        var text = new StringBuilder("# Practice sheet. Write each value as you read it; leave out what you do not take.\n");
        text.Append(CultureInfo.InvariantCulture, $"sheet,{request.Number}\n\nkind,from,to,value,instrument,note\n");
        foreach (var r in request.Readings) Row(r.Kind, r.From, r.To, r.Value, r.Instrument, "");
        foreach (var s in PractiseMeasuring.Measure(request).Steps.Where(s => s.Read == 0)) Row(s.Kind, s.From, s.To, "", instrument, $"about {s.About}");
        return text.ToString();

        void Row(params ReadOnlySpan<string> cells) => text.Append(string.Join(',', cells.ToArray().Select(MeasureSample.BlankSheet.Quoted))).Append('\n');
    }
}
