using System.Collections.Immutable;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.FrontOffice.PractiseMeasuring.Compared;

/// <summary>How a person's own readings scatter, instrument by instrument; misread ones are left out.</summary>
static class Scattering
{
    /// <summary>Of fewer readings nothing can be said.</summary>
    const double FewestFree = 3;

    public static ImmutableArray<ScatterFound> Of(PracticeRequest request, PrintFit fit) =>
        [.. fit.Readings.GroupBy(r => r.Instrument.Trim().ToLowerInvariant()).Select(g => One(request, fit, g.Key, [.. g])).OfType<ScatterFound>()];

    static ScatterFound? One(PracticeRequest request, PrintFit fit, string instrument, ImmutableArray<ReadBeside> readings)
    {
        var free = readings.Sum(r => 1 - fit.Leverage(r));
        if (free < FewestFree) return null;
        var std = Math.Sqrt(readings.Sum(r => fit.Residual(r) * fit.Residual(r)) / free);
        var freedom = (int)Math.Round(free);
        var promised = Math.Sqrt(readings.Average(r => r.Sigma * r.Sigma));
        return new(instrument, readings.Length, std, std * Math.Sqrt(freedom / ChiSquare.Quantile(0.975, freedom)), std * Math.Sqrt(freedom / ChiSquare.Quantile(0.025, freedom)),
            promised, Repeats(request, readings));
    }

    /// <summary>About the mean of each thing read more than once, pooled (JCGM 100, 4.2.4).</summary>
    static double? Repeats(PracticeRequest request, ImmutableArray<ReadBeside> readings)
    {
        var (squares, freedom) = (0.0, 0);
        foreach (var same in readings.GroupBy(r => request.Readings[r.Row] with { Value = "", Instrument = "" }).Where(g => g.Count() > 1))
        {
            var mean = same.Average(r => r.Value);
            squares += same.Sum(r => (r.Value - mean) * (r.Value - mean));
            freedom += same.Count() - 1;
        }
        return freedom == 0 ? null : Math.Sqrt(squares / freedom);
    }
}
