using System.Globalization;
using System.Text;

namespace WitnessMark.Stores.Judging;

/// <summary>A comparison in words, as it is kept with the decision.</summary>
public static class ComparisonWords
{
    /// <summary>A line for each route, then its reasons; a few thousand characters.</summary>
    public static string Words(this RouteComparison c)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{c.PartName}, routes compared on {c.On:yyyy-MM-dd} at {c.HoursAWeek:0.#} hours a week\n");
        foreach (var row in c.Rows)
        {
            text.Append($"{row.Outlook.Route.Words()}: {Figures(row, c.Currency)}\n");
            foreach (var remark in Remarks(row)) text.Append($"  {remark}\n");
        }
        return text.ToString();
    }

    static string Figures(RouteRow row, string currency)
    {
        var o = row.Outlook;
        if (o.Barred is { } barred) return $"cannot be done: {barred}";
        return string.Create(CultureInfo.InvariantCulture,
            $"{Told(o.Hours, "h", "0.0")}; {Told(o.Money, currency, "0.00")}; {(row.ReadyBy is { } by ? $"ready by {by:yyyy-MM-dd} ({row.ReadyEarly:yyyy-MM-dd} to {row.ReadyLate:yyyy-MM-dd})" : "date not known")}; right first time {o.Certainty.Value:0%}; originality {o.Originality.Value:0%}");
    }

    static IEnumerable<string> Remarks(RouteRow row)
    {
        var o = row.Outlook;
        if (o.Barred is null)
        {
            yield return $"certainty: {o.Certainty.Why} ({o.Certainty.Source})";
            yield return $"originality: {o.Originality.Why} ({o.Originality.Source})";
            foreach (var lacking in o.Lacking) yield return $"lacking: {lacking}";
        }
        if (row.Beaten is { } beaten) yield return beaten;
    }

    static string Told(Estimate? e, string unit, string format) => e is null ? $"{unit} not known"
        : string.Create(CultureInfo.InvariantCulture, $"expected {e.Expected.ToString(format, CultureInfo.InvariantCulture)} {unit} ({e.Low.ToString(format, CultureInfo.InvariantCulture)} to {e.High.ToString(format, CultureInfo.InvariantCulture)}, {e.Source})");
}
