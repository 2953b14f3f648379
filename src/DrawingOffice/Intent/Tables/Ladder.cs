using System.Globalization;
using WitnessMark.Maths.Units;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Intent.Tables;

/// <summary>
/// Even ladders of sizes, coarser rungs likelier. Each class of rung holds a share of the ladder (common practice, shares
/// add to 1) and stands on average one step apart, so a rung's mass is share·step/size.
/// </summary>
static class Ladder
{
    public const string InchSeries = "inch fraction", MetricSeries = "metric size", DegreeSeries = "whole degrees";

    // Below its first rungs a ladder says nothing: no rung holds more than an octave.
    static readonly double MostMass = Math.Log(2);

    public static double Mass(double share, double step, double size) => share * Math.Min(step / size, MostMass);

    /// <summary>Inch fractions to 1/64 between two sizes, mm.</summary>
    public static IEnumerable<Candidate> InchFractions(double low, double high, string series = InchSeries)
    {
        const double sixtyFourth = Inch.Mm / 64;
        for (var n = (int)Math.Max(1, Math.Ceiling(low / sixtyFourth)); n * sixtyFourth <= high; n++)
        {
            var (share, step) = InchClass(Fractions.LowestDenominator(n, 64));
            yield return new Candidate(Inch.Fraction(n, 64) + " in", series, n * sixtyFourth, Mass(share, step * Inch.Mm, n * sixtyFourth));
        }
    }

    /// <summary>Tenths of a millimetre between two sizes, mm.</summary>
    public static IEnumerable<Candidate> MetricTenths(double low, double high, string series = MetricSeries)
    {
        for (var tenths = (long)Math.Max(1, Math.Ceiling(low * 10)); tenths <= high * 10; tenths++)
        {
            var (share, step) = MetricClass(tenths);
            var mm = tenths / 10.0;
            yield return new Candidate(Named(mm, " mm"), series, mm, Mass(share, step, mm));
        }
    }

    /// <summary>Half degrees between two angles, radians.</summary>
    public static IEnumerable<Candidate> HalfDegrees(double low, double high)
    {
        const double half = Math.PI / 360;
        for (var halves = (int)Math.Max(1, Math.Ceiling(low / half)); halves <= Math.Min(high, Math.PI) / half; halves++)
        {
            var (share, step) = DegreeClass(halves);
            yield return new Candidate(Named(halves / 2.0, "°"), DegreeSeries, halves * half, Mass(share, step, halves / 2.0));
        }
    }

    static (double Share, double Step) InchClass(int lowestDenominator) => lowestDenominator switch
    {
        1 => (0.12, 1),
        2 => (0.15, 1),
        4 => (0.20, 1 / 2.0),
        8 => (0.22, 1 / 4.0),
        16 => (0.18, 1 / 8.0),
        32 => (0.08, 1 / 16.0),
        _ => (0.05, 1 / 32.0),
    };

    static (double Share, double Step) MetricClass(long tenths) => tenths switch
    {
        _ when tenths % 100 == 0 => (0.20, 10),
        _ when tenths % 50 == 0 => (0.20, 10),
        _ when tenths % 20 == 0 => (0.20, 2.5),
        _ when tenths % 10 == 0 => (0.17, 2.5),
        _ when tenths % 5 == 0 => (0.13, 1),
        _ => (0.10, 1 / 8.0),
    };

    static (double Share, double Step) DegreeClass(int halves) => (halves / 2.0) switch
    {
        90 => (0.25, 90),
        30 or 45 or 60 or 120 or 135 or 150 => (0.20, 25),
        _ when halves % 30 == 0 => (0.10, 30),
        _ when halves % 10 == 0 => (0.20, 7.5),
        _ when halves % 2 == 0 => (0.15, 1.25),
        _ => (0.10, 1),
    };

    static string Named(double value, string unit) => value.ToString("0.##", CultureInfo.InvariantCulture) + unit;
}
