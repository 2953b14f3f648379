using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.Stores.Orders;

namespace WitnessMark.Web.Client.Stores;

/// <summary>Reads what is typed into a form; each throws <see cref="RefusedException"/> with the field, the value and what would be right.</summary>
public static class Fields
{
    public static int Count(string field, string written) =>
        int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : throw Refused(field, written, "write a whole number");

    public static DateOnly Date(string field, string written) =>
        DateOnly.TryParseExact(written, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : throw Refused(field, written, "give a date");

    /// <summary>Null when nothing is written.</summary>
    public static DateOnly? DateOrNone(string field, string written) => written.Trim().Length == 0 ? null : Date(field, written);

    public static decimal Amount(string field, string written) =>
        decimal.TryParse(written.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var a) ? a
            : throw Refused(field, written, "write the amount in figures, without the currency");

    public static Money Money(string field, string written, string currency) => new(Amount(field, written), currency.Trim().ToUpperInvariant());

    /// <summary>mm from any spelling of a length; null when nothing is written.</summary>
    public static double? Length(string field, string written) => written.Trim().Length == 0 ? null : Lengths.Read(written, field: field).Value.Mm;

    public static string Written(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    static RefusedException Refused(string field, string written, string right) => new(Refusal.Of(field, written.Trim().Length == 0 ? null : written, right));
}
