using System.Collections.Immutable;
using System.Text;
using WitnessMark.DrawingOffice.Drafting.Forms;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>An empty reading sheet, to be filled in a spreadsheet or a text editor.</summary>
public static class BlankSheet
{
    /// <summary>A sheet that reads as it stands once a feature is on it. <c>#</c> rows say what may be written.</summary>
    public static string Write(string id = "sample", string title = "")
    {
        var sheet = new StringBuilder();
        sheet.Append($"""
            # Reading sheet. A row that begins with # is a remark. Write values as you read them: 31.5, 3 5/16", 64 thou, 12.70; 12.72 (repeats).
            sample,{Quoted(id)},{Quoted(title)}
            units,mm

            # What is on the part. Kinds: corner, hole, slot, edge (from corner, to corner), arc. x and y: a rough sketch, may stay empty.
            feature,kind,from,to,x,y

            # The readings.
            # Instruments: {string.Join(", ", Instrument.Usual.Select(i => i.Name))}; or write how far off it can be: ± 0.05

            """);
        foreach (var rule in KindRule.All) sheet.Append(Row(rule));
        sheet.Append("kind,from,to,value,instrument,note\n");
        return sheet.ToString().ReplaceLineEndings("\n");
    }

    /// <summary>The same to fill in by hand on the bench, A4.</summary>
    public static ImmutableArray<PrintRoom.Sheet> Print(string id = "", string title = "") =>
        ReadingSheet.Draw(new ReadingSheetFields(id, title) { Kinds = [.. KindRule.All.Select(r => r.Words)] });

    static string Row(KindRule rule)
    {
        var from = string.Join(" or ", rule.From.Select(FeatureWords.One));
        var to = rule.To.IsEmpty ? "" : $" to {string.Join(" or ", rule.To.Select(FeatureWords.One))}";
        return $"# {rule.Words}: {from}{to}\n";
    }

    internal static string Quoted(string cell) =>
        cell.AsSpan().IndexOfAny(",;\"\t\r\n") < 0 ? cell : $"\"{cell.ReplaceLineEndings(" ").Replace("\"", "\"\"")}\"";
}
