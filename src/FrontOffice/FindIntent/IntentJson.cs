using System.Text.Json;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.FrontOffice.MeasureSample.Json;

namespace WitnessMark.FrontOffice.FindIntent;

/// <summary>What was meant, as one JSON object, mm and radians.</summary>
static class IntentJson
{
    public static string Write(IntentResult result) => JsonWriting.Whole(json =>
    {
        var intent = result.Intent;
        json.WriteString("id", result.Sample.Id);
        json.WriteString("title", result.Sample.Title);
        json.WriteString("words", intent.Words);
        json.WriteNumber("conditions", intent.Conditions);
        json.WriteFinite("chi_square", intent.Test.Statistic);
        json.WriteFinite("chi_square_high", intent.Test.High);
        json.WriteBoolean("agrees", intent.Test.Passes);
        json.WriteList("findings", intent.Findings, f => Write(json, f));
        json.WriteList("undecided", intent.Undecided, u =>
        {
            json.WriteString("first", u.First);
            json.WriteString("second", u.Second);
            json.WriteFinite("odds", u.Odds);
            json.WriteString("reading", u.Reading);
            json.WriteString("words", u.Words);
        });
        json.WriteList("origins", intent.Origins, o =>
        {
            json.WriteString("name", o.Name);
            json.WriteFinite("probability", o.Probability);
        });
        json.WriteList("meant", intent.Meant, m =>
        {
            json.WriteString("id", m.Id);
            json.WriteString("kind", m.Kind.ToString().ToLowerInvariant());
            json.WriteFinite("x_mm", m.At.X);
            json.WriteFinite("y_mm", m.At.Y);
            json.WriteFinite("turn_rad", m.Turn);
            json.WriteFinite("size_mm", m.Size);
            json.WriteFinite("length_mm", m.Length);
            json.WriteFinite("moved_mm", m.Moved);
        });
        json.WriteStrings("cautions", result.Cautions);
    });

    static void Write(Utf8JsonWriter json, Finding f)
    {
        json.WriteString("key", f.Key);
        json.WriteString("standing", f.Standing.ToString().ToLowerInvariant());
        json.WriteStrings("features", f.Features);
        json.WriteString("about", f.About);
        json.WriteString("nominal", f.Nominal?.Name);
        json.WriteFinite("nominal_value", f.Nominal?.Value);
        json.WriteFinite("chi_square", f.ChiSquare);
        json.WriteNumber("freedom", f.Freedom);
        json.WriteFinite("log_odds", f.LogOdds);
        json.WriteString("moved_most", f.Moved?.Feature);
        json.WriteFinite("moved_mm", f.Moved?.Distance);
        json.WriteString("words", f.Words);
    }
}
