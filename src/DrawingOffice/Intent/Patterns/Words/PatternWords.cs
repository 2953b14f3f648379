using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Words;

/// <summary>What was found, in plain sentences.</summary>
static class PatternWords
{
    public static string Of(Group g, Shape shape, double[] x)
    {
        var names = Names([.. g.Features.Distinct().Select(shape.Id)]);
        return g.Kind switch
        {
            PatternKind.EqualSize => $"{names} are of one size, {SizeWord(shape.Kind(g.Features[0]))} {Mm(shape.Size(g.Features[0], x))}.",
            PatternKind.RoundSize => $"{names} {(g.Features.Length == 1 ? "was" : "were")} made to {SizeWord(shape.Kind(g.Features[0]))} {g.Nominal!.Name}.",
            PatternKind.Parallel => $"{names} are parallel.",
            PatternKind.Square => $"{names} are square to each other.",
            PatternKind.SetAngle => $"{names} stand at {g.Nominal!.Name}.",
            PatternKind.InLine => $"{names} stand in one line {Way(g)}.",
            PatternKind.OnEdge => $"{Names([.. g.Features[..^1].Select(shape.Id)])} {(g.Features.Length == 2 ? "lies" : "lie")} on the line of {shape.Id(g.Features[^1])}.",
            PatternKind.EquallySpaced => $"{names} are equally spaced: {g.Features.Length - 1} spaces of {Mm(Gap(g, x))}.",
            PatternKind.PitchCircle => $"{names} stand on a circle of {Mm(2 * g.Ring!.Radius(g.Features[0], x))} diameter round {Centre(g)}.",
            PatternKind.EqualSteps => $"{names} stand on a circle of {Mm(2 * g.Ring!.Radius(g.Features[0], x))} diameter round {Centre(g)}, {Steps(g)}.",
            PatternKind.Symmetric => $"{Pairs(g, shape)} lie evenly about one middle line {(g.About!.StartsWith("along", StringComparison.Ordinal) ? "square to" : "along")} {g.Frame!.Name}.",
            PatternKind.Tangent => $"{shape.Id(g.Features[0])} runs smoothly into {shape.Id(g.Features[1])}.",
            PatternKind.Concentric => $"{names} have one centre.",
            _ when g.Ring is not null => $"The circle of {names} round {Centre(g)} was set out to {g.Nominal!.Name} diameter.",
            _ => $"{shape.Id(g.Features[0])} to {shape.Id(g.Features[1])} was given as {g.Nominal!.Name} {Way(g)}.",
        };
    }

    public static string Names(ImmutableArray<string> ids) => ids.Length switch
    {
        1 => ids[0],
        > 12 => $"{string.Join(", ", ids[..10])} and {ids.Length - 10} more",
        _ => $"{string.Join(", ", ids[..^1])} and {ids[^1]}",
    };

    public static string Mm(double mm) => mm.ToString("0.00", CultureInfo.InvariantCulture) + " mm";

    /// <summary>Odds as a person says them: never more than a million to one.</summary>
    public static string Odds(double log) => Math.Exp(Math.Min(Math.Abs(log), 20)) switch
    {
        < 1.5 => "even",
        < 10 and var o => $"{o.ToString("0.0", CultureInfo.InvariantCulture)} to 1",
        < 9.9e5 and var o => $"{Rounded(o)} to 1",
        _ => "over a million to 1",
    };

    /// <summary>The same, and which way they go where they go against it.</summary>
    public static string OddsFor(double log) => Odds(log) is var said && log < 0 && said != Odds(0) ? $"{said} against it" : said;

    static string Rounded(double odds)
    {
        var scale = Math.Pow(10, Math.Floor(Math.Log10(odds)) - 1);
        return (Math.Round(odds / scale) * scale).ToString("0", CultureInfo.InvariantCulture);
    }

    static string Pairs(Group g, Shape shape)
    {
        string Said(int a, int b) => a == b ? shape.Id(a) : $"{shape.Id(a)} with {shape.Id(b)}";
        return Names([.. g.Features.Chunk(2).Where(p => p.Length == 2).Select(p => Said(p[0], p[1]))]);
    }

    static double Gap(Group g, double[] x) => Math.Abs(g.Frame!.Station(g.Features[1], g.Across, x) - g.Frame.Station(g.Features[0], g.Across, x));

    static string Steps(Group g)
    {
        var step = 360.0 / g.Ring!.Steps;
        return g.Ring.Steps == g.Features.Length ? $"in {g.Ring.Steps} equal steps all round" : $"in steps of {step.ToString("0.##", CultureInfo.InvariantCulture)}°";
    }

    static string Centre(Group g) => g.Ring!.Centre < 0 ? "their own middle" : g.Ring.Shape.Id(g.Ring.Centre);

    // "along E1" and "square to E1" are read the same way for rows and for distances.
    static string Way(Group g) => g.About!.StartsWith("along", StringComparison.Ordinal) ? g.About : $"square to {g.Frame!.Name}";

    static string SizeWord(FeatureKind kind) => kind switch
    {
        FeatureKind.Arc => "radius",
        FeatureKind.Slot => "width",
        _ => "diameter",
    };
}
