using System.Collections.Immutable;
using System.Globalization;

namespace WitnessMark.Trade;

/// <summary>Round metric sizes, and the preferred numbers of ISO 3.</summary>
public static class MetricSizes
{
    /// <summary>Every multiple of a step above zero, up to and including a length, smallest first.</summary>
    /// <param name="mm">Largest length, mm; from 0 to 100 000.</param>
    /// <param name="stepsPerMm">1 for whole, 2 for half, 10 for tenths of a millimetre.</param>
    public static ImmutableArray<NominalSize> UpTo(double mm, int stepsPerMm = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(mm);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mm, 100_000);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stepsPerMm);
        var steps = (int)Math.Floor(mm * stepsPerMm + 1e-9);
        return [.. Enumerable.Range(1, steps).Select(n => Of((double)n / stepsPerMm, "metric", Sources.Exact))];
    }

    /// <summary>
    /// Preferred numbers between two lengths, smallest first: the rounded values of ISO 3, R10 and R20 from memory
    /// (10^(k/10) and 10^(k/20), off by 1.3 % at most).
    /// </summary>
    /// <param name="from">mm, above 0.</param>
    public static ImmutableArray<NominalSize> Preferred(PreferredSeries series, double from, double to)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(from);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(to, 100_000);
        var name = series.ToString();
        var source = Sources.Of(series == PreferredSeries.R5 ? "wikipedia-renard" : "memory");
        var step = series switch { PreferredSeries.R5 => 4, PreferredSeries.R10 => 2, _ => 1 };
        var sizes = ImmutableArray.CreateBuilder<NominalSize>();
        for (var decade = (int)Math.Floor(Math.Log10(from)); Math.Pow(10, decade) <= to; decade++)
            for (var k = 0; k < R20.Length; k += step)
            {
                var mm = Scaled(R20[k], decade);
                if (mm >= from && mm <= to) sizes.Add(Of(mm, name, source));
            }
        return sizes.ToImmutable();
    }

    /// <summary>R20 of ISO 3, hundredths.</summary>
    static readonly int[] R20 = [100, 112, 125, 140, 160, 180, 200, 224, 250, 280, 315, 355, 400, 450, 500, 560, 630, 710, 800, 900];

    static double Scaled(int hundredths, int decade) =>
        decade >= 2 ? hundredths * Math.Pow(10, decade - 2) : hundredths / Math.Pow(10, 2 - decade);

    static NominalSize Of(double mm, string series, Source source) =>
        new(mm.ToString("0.######", CultureInfo.InvariantCulture) + " mm", series, mm, source);
}

/// <summary>Series of ISO 3: so many sizes to a decade.</summary>
public enum PreferredSeries { R5, R10, R20 }
