using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;

namespace WitnessMark.Web.Client.PlanningOffice.Frame;

/// <summary>What is typed into the fields of a plan, read back; refusals name the field and the value.</summary>
public static class Typed
{
    /// <summary>A decimal comma is taken as a point.</summary>
    public static double Number(string field, string text) =>
        double.TryParse(text.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var x) && double.IsFinite(x) ? x
        : throw new RefusedException(Refusal.Of(field, text, "write a number such as 3 or 2.5"));

    public static int Whole(string field, string text) =>
        int.TryParse(text.Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var n) ? n
        : throw new RefusedException(Refusal.Of(field, text, "write a whole number"));

    public static decimal Money(string field, string text) =>
        decimal.TryParse(text.Trim().Replace(',', '.'), NumberStyles.Number, CultureInfo.InvariantCulture, out var x) ? x
        : throw new RefusedException(Refusal.Of(field, text, "write an amount such as 120 or 120.50"));

    /// <summary>Null when nothing is written.</summary>
    public static DateOnly? Day(string field, string text) =>
        text.Trim().Length == 0 ? null
        : DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
        : throw new RefusedException(Refusal.Of(field, text, "write a day as 2027-06-05"));
}

/// <summary>Low, likely and high as they are typed.</summary>
public sealed class TypedThree(ThreePoint from)
{
    public string Low { get; set; } = Told.Number(from.Low);

    public string Likely { get; set; } = Told.Number(from.Likely);

    public string High { get; set; } = Told.Number(from.High);

    public ThreePoint Read(string field)
    {
        var three = new ThreePoint(Typed.Number($"{field}, low", Low), Typed.Number($"{field}, likely", Likely), Typed.Number($"{field}, high", High));
        return three.Wrong is { } wrong ? throw new RefusedException(wrong.In(field)) : three;
    }

    /// <summary>As money.</summary>
    public Cost Read(string field, string currency) => Cost.Of(Read(field), currency);
}
