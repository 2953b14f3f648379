using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.PlanningOffice;

namespace WitnessMark.FrontOffice.PlanJobs;

/// <summary>The money table: what is on hand, what comes each month or once, and rates of other currencies.</summary>
sealed class MoneyRows
{
    readonly ImmutableArray<DatedMoney>.Builder _once = ImmutableArray.CreateBuilder<DatedMoney>();
    readonly ImmutableArray<ExchangeRate>.Builder _rates = ImmutableArray.CreateBuilder<ExchangeRate>();
    string _currency = "GBP";
    DatedMoney? _onHand;
    ThreePoint _monthly;

    public Purse Purse => new(_currency, _onHand, _monthly, _once.ToImmutable(), _rates.ToImmutable());

    public void Take(SheetCells row)
    {
        var place = new Place(row.Line);
        var likely = Amount(place, "likely", row["likely"]);
        switch (row.First.ToLowerInvariant())
        {
            case "on hand":
                (_currency, _onHand) = (row["currency"], new(Day(place, "day", row["day"]), (decimal)likely, row["words"]));
                break;
            case "each month":
                _monthly = Rising(place, row, likely);
                break;
            case "once":
                _once.Add(new(Day(place, "day", row["day"]), (decimal)likely, row["words"]));
                break;
            case "rate":
                _rates.Add(new(row["currency"], likely, Day(place, "day", row["day"])));
                break;
            default:
                throw place.Refuse("money", row.First, "the rows are on hand, each month, once and rate");
        }
    }

    /// <summary>A bare likely figure is sure.</summary>
    static ThreePoint Rising(Place place, SheetCells row, double likely)
    {
        var t = new ThreePoint(row["low"] == "" ? likely : Amount(place, "low", row["low"]), likely, row["high"] == "" ? likely : Amount(place, "high", row["high"]));
        return t.Wrong is null ? t : throw place.Refuse("low, likely, high", $"{row["low"]}, {row["likely"]}, {row["high"]}", "they must rise (or be equal), from 0 up");
    }

    static double Amount(Place place, string field, string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var x) && Math.Abs(x) < 1e12 ? x : throw place.Refuse(field, text, "give an amount such as 120 or 120.50");

    public static DateOnly Day(Place place, string field, string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
        : throw place.Refuse(field, text, "give a date as 2027-06-05");
}
