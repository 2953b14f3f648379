using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Survey;

/// <summary>
/// What a reading was taken with. Its standard uncertainty follows JCGM 100 (GUM), all in mm (radians for a protractor):
/// u² = resolution²/12 (4.3.7, type B, rectangular) + stated²/3 (4.3.7, half-width) + s²/n (4.2.3, type A).
/// </summary>
/// <param name="Resolution">Smallest step read, full width.</param>
/// <param name="StatedError">Largest error the maker or the check states, half-width.</param>
/// <param name="Repeatability">Spread of single repeated readings, one standard deviation; used when the person gives no repeats.</param>
public sealed record Instrument(string Name, double Resolution, double StatedError, double Repeatability, bool ReadsAngle = false)
{
    /// <summary>The list a person starts from and edits; figures marked common practice in docs/sources.md.</summary>
    public static ImmutableArray<Instrument> Usual { get; } =
    [
        new("rule", 0.5, 0.25, 0.15),
        new("tape", 1, 0.5, 0.3),
        new("calliper", 0.02, 0.03, 0.01),
        new("micrometer", 0.01, 0.004, 0.003),
        new("height gauge", 0.02, 0.03, 0.01),
        new("protractor", Math.PI / 180, Math.PI / 360, Math.PI / 720, ReadsAngle: true),
        new("radius gauge", 0.5, 0.1, 0.1),
        new("scan", 0.1, 0.2, 0.1),
    ];

    /// <summary>Standard uncertainty of one reading, or of the mean of repeats.</summary>
    /// <param name="repeats">Repeated readings of the same thing, this instrument's unit; empty or one: the instrument's own repeatability counts.</param>
    public double StandardUncertainty(params ReadOnlySpan<double> repeats)
    {
        var typeB = Resolution * Resolution / 12 + StatedError * StatedError / 3;
        return Math.Sqrt(typeB + TypeA(repeats));
    }

    double TypeA(ReadOnlySpan<double> repeats)
    {
        var n = repeats.Length;
        if (n < 2) return Repeatability * Repeatability;
        double mean = 0, squares = 0;
        foreach (var r in repeats) mean += r / n;
        foreach (var r in repeats) squares += (r - mean) * (r - mean);
        // Few repeats say little of the spread: the instrument's own repeatability is the floor.
        return Math.Max(squares / (n - 1), Repeatability * Repeatability) / n;
    }
}
