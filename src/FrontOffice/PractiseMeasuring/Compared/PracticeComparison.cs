using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.PractiseMeasuring.Compared;

/// <summary>A size as it truly is on the paper beside what was found, mm.</summary>
/// <param name="Drawn">As drawn, before the printer had it.</param>
/// <param name="True">On the paper, by the check lines.</param>
/// <param name="Found">With the ± that the plan gives it.</param>
/// <param name="PlusMinus">± (19 in 20) of the difference: the plan's and that of the check lines together.</param>
public sealed record SizeCompared(string What, double Drawn, double True, Uncertain Found, double PlusMinus)
{
    public double Difference => Found.Value - True;

    public double Ratio => Difference / PlusMinus;

    public bool Inside => Math.Abs(Ratio) <= 1;
}

/// <summary>How a person's readings with one instrument scatter about the truth, standard deviations in mm.</summary>
/// <param name="Low">With <paramref name="High"/> holds the true scatter in 95 of 100 cases (chi-square).</param>
/// <param name="Promised">What the instrument's ± promises.</param>
/// <param name="OfRepeats">Scatter of what was read more than once, about its own mean; null when nothing was.</param>
public sealed record ScatterFound(string Instrument, int Readings, double Std, double Low, double High, double Promised, double? OfRepeats)
{
    public bool Worse => Promised < Low;

    public bool Better => Promised > High;
}

/// <summary>A reading that lies too far from the truth to be scatter.</summary>
/// <param name="Row">Place among the readings as written, from 0.</param>
/// <param name="Seen">The plan had its doubts before the truth was known.</param>
public sealed record MisreadFound(int Row, string What, string Written, double Read, double ShouldBe, bool Seen);

/// <summary>What the check lines tell of the print: 0.005 is half a per cent too long. Null where none was read.</summary>
public sealed record PrintFound(Uncertain? Across, Uncertain? Up);

/// <summary>Squares of all differences over their ±, summed, beside what chance alone gives in 95 of 100 sheets.</summary>
public sealed record SquaresFound(double Sum, int Freedom, double Low, double High)
{
    public bool Passes => Sum >= Low && Sum <= High;
}

/// <summary>The true sizes laid beside what was found, and an honest word on it.</summary>
/// <param name="InsideUnscaled">How many sizes would lie inside their ± had the check lines not been read.</param>
/// <param name="InsideWithOwn">How many lie inside when the ± are taken from the person's own scatter; null when it is as promised.</param>
/// <param name="Words">The verdict, a sentence or two each.</param>
public sealed record PracticeComparison(
    int Number, ImmutableArray<SizeCompared> Sizes, int InsideUnscaled, int? InsideWithOwn, SquaresFound Squares, PrintFound Print,
    ImmutableArray<ScatterFound> Scatter, ImmutableArray<MisreadFound> Misread, ImmutableArray<string> Words)
{
    public int Inside => Sizes.Count(s => s.Inside);
}
