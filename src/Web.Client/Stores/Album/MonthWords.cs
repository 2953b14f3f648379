using System.Globalization;

namespace WitnessMark.Web.Client.Stores.Album;

public static class MonthWords
{
    /// <summary>May 2031 for 2031-05; as it stands where it is no month.</summary>
    public static string Of(string month) =>
        DateOnly.TryParseExact(month, "yyyy-MM", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day.ToString("MMMM yyyy", CultureInfo.InvariantCulture) : month;
}
