using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Forms;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Taking;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.FrontOffice.TakeSample;

/// <summary>A sketched sample, and what is in the box to take it with.</summary>
public sealed record TakeRequest(Sample Sample)
{
    /// <summary>Empty: <see cref="BenchTool.Usual"/>.</summary>
    public ImmutableArray<BenchTool> Tools { get; init; } = [];

    /// <summary>Wanted ± of every distance and size (19 in 20), mm; null: only hold and check everything.</summary>
    public double? WantedPlusMinus { get; init; }
}

/// <summary>One line for the phone: what to set the tool to, and what to type under.</summary>
/// <param name="About">Rough value in words, with its unit.</param>
/// <param name="Kind">As on a reading sheet.</param>
public sealed record TakeLine(int Number, string Group, string Kind, string From, string To, string About, string Instrument, double Redundancy);

/// <summary>The list, in the order of working.</summary>
public sealed record TakeResult(Sample Sample, TakingList<ReadingKind> List)
{
    public ImmutableArray<string> Cautions => List.Cautions;

    public ImmutableArray<TakeLine> Lines => [.. List.Steps.Select(s => new TakeLine(
        s.Number, TakeSample.Group(s), KindRule.Of(s.Kind).Words, s.From, s.To ?? "", TakeSample.About(s), s.Instrument, s.Redundancy))];

    /// <summary>One sentence: how many, and how far that is from the least there can be.</summary>
    public string Words => TakeSample.Said(List.Steps.Length, List.Complete, List.Least, List.LargestStd);

    /// <summary>A4, with an empty box for each reading.</summary>
    public PrintOut Print(DateTimeOffset? created) => PrintOut.Pdf($"{Sample.Id}-taking", Sheets(), created);

    public ImmutableArray<PrintRoom.Sheet> Sheets() => TakingSheet.Draw(
        Sample,
        TakeSample.Groups(Lines),
        [Words, .. Cautions]);
}

/// <summary>Before the part goes back: which readings to take, in which order, with which tool.</summary>
public static class TakeSample
{
    /// <exception cref="RefusedException">A feature has no rough place, the wanted ± is none, or there is no tool.</exception>
    public static TakeResult Run(TakeRequest request, CancellationToken stop = default)
    {
        return new TakeResult(request.Sample, TakingPlan.Of(request.Sample, request.Tools, WantedStd(request.WantedPlusMinus), stop));
    }

    internal static double? WantedStd(double? plusMinus) => plusMinus is { } half && !(half > 0 && double.IsFinite(half))
        ? throw new RefusedException(Refusal.Of("wanted ±", half.ToString("R", CultureInfo.InvariantCulture), "give a ± of more than 0 mm"))
        : plusMinus / 2;

    /// <summary>Tools as typed: <c>calliper 150, tape 3000, height gauge 300, radius gauge, protractor</c>; a number is the reach in mm.</summary>
    public static ImmutableArray<BenchTool> ToolsOf(string text)
    {
        var tools = ImmutableArray.CreateBuilder<BenchTool>();
        foreach (var part in text.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var (name, reach) = Split(part);
            switch (name.ToLowerInvariant())
            {
                case "calliper":
                    tools.AddRange(BenchTool.Calliper(reach ?? 150));
                    break;
                case "tape":
                    tools.Add(BenchTool.Tape(reach ?? 5000));
                    break;
                case "height gauge":
                    tools.Add(BenchTool.HeightGauge(reach ?? 300));
                    break;
                case "radius gauge":
                    tools.Add(BenchTool.RadiusGauges);
                    break;
                case "protractor":
                    tools.Add(BenchTool.Protractor);
                    break;
                default:
                    throw new RefusedException(Refusal.Of("tools", part, "write calliper 150, tape 3000, height gauge 300, radius gauge or protractor, with commas between; a number is how far it reaches in mm"));
            }
        }
        return tools.Count > 0 ? tools.ToImmutable() : throw new RefusedException(Refusal.Of("tools", text, "name at least one tool, such as calliper 150"));
    }

    static (string Name, double? Reach) Split(string part)
    {
        var space = part.LastIndexOf(' ');
        if (space < 0 || !char.IsAsciiDigit(part[space + 1])) return (part, null);
        var reach = Lengths.Read(part[(space + 1)..], field: "tools").Value.Mm;
        return reach is > 0 and <= 100_000 ? (part[..space], reach) : throw new RefusedException(Refusal.Of("tools", part, "a tool reaches more than 0 and at most 100000 mm"));
    }

    internal static string Said(int readings, bool complete, int least, double? largestStd)
    {
        if (readings == 0) return complete ? "Nothing more to take: everything is held and checked." : "These tools can settle nothing more.";
        var fewest = least >= readings ? "no list can be shorter" : $"no list can be shorter than {least}";
        var sure = largestStd is { } std ? $"; the least sure distance or size will be ± {LengthWriter.Write(2 * std)}" : "";
        return $"{readings} reading{(readings == 1 ? "" : "s")} to take ({fewest}){sure}.";
    }

    internal static ImmutableArray<TakingGroup> Groups(ImmutableArray<TakeLine> lines) =>
        [.. lines.GroupBy(l => l.Group).Select(g => new TakingGroup(g.Key, [.. g.Select(l => new TakingRow(l.Number.ToString(CultureInfo.InvariantCulture), l.Kind, l.From, l.To, l.About))]))];

    internal static string Group(TakingStep<ReadingKind> s) => s.Way == Way.DepthRod ? "Calliper, depth rod: square to the edge" : Group(s.Way, s.To);

    internal static string Group(Way way, string? to) => way switch
    {
        Way.InsideJaws => to is null ? "Calliper, inside jaws: sizes" : "Calliper, inside jaws: over two holes",
        Way.OutsideJaws => "Calliper, outside jaws",
        Way.DepthRod => "Calliper, depth rod: square to the face",
        Way.Tape => "Tape",
        Way.HeightGauge => $"Height gauge on the plate, set-up {to}",
        Way.RadiusGauge => "Radius gauge",
        _ => "Protractor",
    };

    internal static string About(TakingStep<ReadingKind> s) => About(s.Expected, KindRule.Of(s.Kind).Measure == Measure.Angle);

    internal static string About(double expected, bool angle) => angle
        ? string.Create(CultureInfo.InvariantCulture, $"{expected * 180 / Math.PI:0}°")
        : string.Create(CultureInfo.InvariantCulture, $"{expected:0} mm");
}
