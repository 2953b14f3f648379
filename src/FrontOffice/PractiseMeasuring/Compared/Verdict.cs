using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.PractiseMeasuring.Compared;

/// <summary>What the comparison comes to, in plain words: no praise, no blame.</summary>
static class Verdict
{
    public static ImmutableArray<string> Of(PracticeComparison c) => [Sizes(c), .. c.Scatter.Select(Scatter), Squares(c), .. Print(c), .. c.Misread.Select(Misread)];

    static string Sizes(PracticeComparison c)
    {
        var expected = 0.95 * c.Sizes.Length;
        var words = $"{c.Inside} of {c.Sizes.Length} sizes lie within their own ±; about {expected:0} were to be expected (19 of 20).";
        return c.InsideWithOwn is { } own && own != c.Inside ? $"{words} With your own scatter in place of the usual ± it would be {own}." : words;
    }

    static string Scatter(ScatterFound s)
    {
        var found = $"Your {s.Instrument} readings scatter by {Mm(s.Std)} mm (surely between {Mm(s.Low)} and {Mm(s.High)}), the usual is {Mm(s.Promised)}";
        var verdict = s switch
        {
            { Worse: true } => $"{found}: the ± that you counted with was too small. On paper there is no metal for the jaws to stop at; with lines on paper count with ± {Mm(2 * s.Std)}, and try on a part of known size how much better metal is.",
            { Better: true } => $"{found}: you read better than was counted on. The ± is on the safe side.",
            _ => $"{found}: just as it should be.",
        };
        return s.OfRepeats is { } repeats ? $"{verdict} What you read twice agreed with itself within {Mm(repeats)} mm." : verdict;
    }

    static string Squares(PracticeComparison c) => c.Squares switch
    {
        { Passes: true } => "Taken together the differences are as large as the ± of the instruments lets one expect.",
        { Sum: var sum, High: var high } when sum > high => "Taken together the differences are larger than the ± of the instruments explains.",
        _ => "Taken together the differences are smaller than the ± of the instruments: either you are better than they, or readings were copied from one another.",
    };

    static IEnumerable<string> Print(PracticeComparison c)
    {
        if (c.Print is { Across: null, Up: null })
        {
            yield return "No check line was read, so the printer was taken at its word. A print that came out too long makes every size differ by the same share.";
            yield break;
        }
        yield return $"The print: {Way(c.Print.Across, "across")}, {Way(c.Print.Up, "up")}.";
        if (c.InsideUnscaled < c.Inside) yield return $"Without the check lines only {c.InsideUnscaled} of {c.Sizes.Length} sizes would have agreed: a thing that is wrong everywhere by the same share cannot be seen by measuring the plate alone.";
    }

    static string Way(Uncertain? scale, string way) => scale switch
    {
        null => $"{way} no line was read",
        { } s when Math.Abs(s.Value) <= 2 * s.Std => $"true {way} within ± {Percent(2 * s.Std)} %",
        { } s => $"{Percent(Math.Abs(s.Value))} % too {(s.Value > 0 ? "long" : "short")} {way} (± {Percent(2 * s.Std)} %)",
    };

    static string Misread(MisreadFound m) =>
        $"Reading {m.Row + 1}, {m.What}, says {m.Written}; on the paper it is {Mm2(m.ShouldBe)} mm. That is misread. {(m.Seen ? "The plan had its doubts before the truth was known." : "Nothing in the other readings showed it.")}";

    static string Percent(double share) => (100 * share).ToString("0.00", CultureInfo.InvariantCulture);

    static string Mm2(double mm) => mm.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>Two figures.</summary>
    static string Mm(double mm) => mm.ToString(mm >= 0.1 ? "0.00" : "0.000", CultureInfo.InvariantCulture);
}
