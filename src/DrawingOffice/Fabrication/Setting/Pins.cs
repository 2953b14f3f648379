using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>Locating pins by the limits of ISO 286.</summary>
public static class Pins
{
    /// <summary>Goes in and out of a drilled hole by hand and still finds its place.</summary>
    public const string Usual = "f7";

    /// <param name="hole">Least diameter that the hole may have, mm, over 3 up to 120.</param>
    /// <param name="shaft">f7, g6 or h6: a class with clearance.</param>
    public static Parsed<Pin> For(double hole, string shaft = Usual)
    {
        if (shaft is not ("f7" or "g6" or "h6")) return Refusal.Of("pin fit", shaft, "write f7, g6 or h6; the others do not go in by hand");
        var limits = Fits.Of(hole, shaft);
        if (!limits.Ok) return limits.Refusal!;
        var (most, least) = (hole + limits.Value.Upper, hole + limits.Value.Lower);
        return new Pin(most, least, $"Pin {Mm(least)} to {Mm(most)} mm for a hole of at least {Mm(hole)} mm ({shaft} of ISO 286 on that size, {limits.Value.Source.Title}).");
    }

    static string Mm(double mm) => mm.ToString("0.000", CultureInfo.InvariantCulture);
}
