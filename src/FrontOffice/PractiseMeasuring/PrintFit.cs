using System.Collections.Immutable;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.FrontOffice.PractiseMeasuring;

/// <summary>A reading beside what the sheet truly is, mm.</summary>
/// <param name="Row">Place among the readings as written, from 0.</param>
/// <param name="True">By the scale of the print.</param>
sealed record ReadBeside(int Row, string Instrument, double Value, double Sigma, Func<PrintScale, double> True);

/// <summary>
/// The scale of the print across and up that fits readings best, with its covariance. Normal equations: there are two unknowns of one unit and
/// one size, and a prior of a few per cent, wider than any printer errs, keeps them solvable when only one way was read.
/// </summary>
sealed record PrintFit(PrintScale Scale, double Across2, double Both, double Up2, ImmutableArray<ReadBeside> Readings)
{
    /// <summary>A printer that scales more than this was told to: that is no practice sheet any more.</summary>
    public const double MostScale = 0.1;

    /// <summary>Standard deviation of the prior.</summary>
    const double Prior = 0.05;

    public static PrintFit None { get; } = new(default, 0, 0, 0, []);

    public static PrintFit Of(ImmutableArray<ReadBeside> readings)
    {
        var scale = default(PrintScale);
        var (aa, ab, bb) = (0.0, 0.0, 0.0);
        // The true length is all but linear in the scale: the second round changes nothing that can be measured.
        for (var round = 0; round < 3; round++)
        {
            const double prior = 1 / (Prior * Prior);
            (aa, ab, bb) = (prior, 0, prior);
            var (ra, rb) = (-prior * scale.Across, -prior * scale.Up);
            foreach (var r in readings)
            {
                var (a, b) = Rates(r.True, scale);
                var (w, e) = (1 / (r.Sigma * r.Sigma), r.Value - r.True(scale));
                (aa, ab, bb) = (aa + w * a * a, ab + w * a * b, bb + w * b * b);
                (ra, rb) = (ra + w * a * e, rb + w * b * e);
            }
            var d = aa * bb - ab * ab;
            scale = new(scale.Across + (bb * ra - ab * rb) / d, scale.Up + (aa * rb - ab * ra) / d);
        }
        var det = aa * bb - ab * ab;
        return new(scale, bb / det, -ab / det, aa / det, readings);
    }

    public double Residual(ReadBeside r) => r.Value - r.True(Scale);

    /// <summary>Variance that the scale gives to a length.</summary>
    public double Variance(Func<PrintScale, double> length)
    {
        var (a, b) = Rates(length, Scale);
        return a * a * Across2 + 2 * a * b * Both + b * b * Up2;
    }

    /// <summary>Share of a reading that goes into the scale itself, 0 to 1.</summary>
    public double Leverage(ReadBeside r) => Variance(r.True) / (r.Sigma * r.Sigma);

    public double Freedom => Readings.Sum(r => 1 - Leverage(r));

    public double WeightedSumOfSquares => Readings.Sum(r => Math.Pow(Residual(r) / r.Sigma, 2));

    /// <summary>
    /// Sets aside one after the other what lies too far off to be scatter: past what one in a thousand does, measured by the spread that the
    /// readings show themselves where that is worse than was promised.
    /// </summary>
    public static (PrintFit Fit, ImmutableArray<ReadBeside> Misread) WithoutMisread(ImmutableArray<ReadBeside> readings)
    {
        var critical = Normal.OutsideQuantile(0.001);
        var (left, misread) = (readings, ImmutableArray.CreateBuilder<ReadBeside>());
        while (true)
        {
            var fit = Of(left);
            if (left.Length < 8 || misread.Count >= readings.Length / 4) return (fit, misread.ToImmutable());
            var off = left.Select(r => (Reading: r, Off: Math.Abs(fit.Residual(r)) / (r.Sigma * Math.Sqrt(Math.Max(0.05, 1 - fit.Leverage(r)))))).OrderBy(x => x.Off).ToList();
            // Of a normal spread half lies within 0.6745 standard deviations.
            var spread = Math.Max(1, off[off.Count / 2].Off / 0.6745);
            if (off[^1].Off <= critical * spread) return (fit, misread.ToImmutable());
            misread.Add(off[^1].Reading);
            left = left.Remove(off[^1].Reading);
        }
    }

    static (double Across, double Up) Rates(Func<PrintScale, double> length, PrintScale at)
    {
        const double step = 1e-4;
        return ((length(at with { Across = at.Across + step }) - length(at with { Across = at.Across - step })) / (2 * step),
            (length(at with { Up = at.Up + step }) - length(at with { Up = at.Up - step })) / (2 * step));
    }
}
