using System.Text;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>An empty reading sheet for a bracket or weldment, to be filled in a spreadsheet or a text editor.</summary>
public static class BlankSolid
{
    /// <summary>A sheet that reads as it stands once a feature is on it. <c>#</c> rows say what may be written.</summary>
    public static string Write(string id = "sample", string title = "")
    {
        var sheet = new StringBuilder();
        sheet.Append($"""
            # Reading sheet in space. A row that begins with # is a remark. Write values as you read them: 31.5, 3 5/16", 12.70; 12.72 (repeats).
            sample,{MeasureSample.BlankSheet.Quoted(id)},{MeasureSample.BlankSheet.Quoted(title)}
            units,mm

            # What is on the part: corner, hole, face, edge (from corner, to corner; or from face, to face), round (bar, tube, boss), set-up.
            # A set-up is the surface plate as the part once stood on it. on: the face that a corner, hole or edge lies on.
            # x to the right, y to the back, z up: a rough sketch in mm, may stay empty. way: where a face looks or a hole points: up, left, front.
            feature,kind,on,from,to,x,y,z,way,size

            # The readings.
            # Instruments: {string.Join(", ", Instrument.Usual.Select(i => i.Name))}; or write how far off it can be: ± 0.05
            # at: opposite which feature a face was touched. pin: diameter of a pin put in the hole; empty where it fills it.

            """);
        foreach (var rule in SolidRule.All) sheet.Append(Row(rule));
        sheet.Append("""
            kind,from,to,value,instrument,at,pin,note

            # A face that was surveyed flat: a row "on face,A,,right" and under it a flat reading sheet (survey-sheet.md) to the end,
            # or "on face,A,flat.csv,right" for one that lies beside this file. right: where its x runs, roughly.

            """);
        return sheet.ToString().ReplaceLineEndings("\n");
    }

    static string Row(SolidRule rule)
    {
        var from = string.Join(" or ", rule.From.Select(SolidWords.One));
        return $"# {rule.Words}: {from}{(rule.To.IsEmpty ? "" : $" to {string.Join(" or ", rule.To.Select(SolidWords.One))}")}\n";
    }
}
