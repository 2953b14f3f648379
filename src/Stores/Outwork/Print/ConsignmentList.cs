using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Tags;

namespace WitnessMark.Stores.Outwork.Print;

/// <summary>The list that goes in the box and its twin that stays: counted out, room to count in, finish, masking, cautions.</summary>
public static class ConsignmentList
{
    const double Small = 2.5, Usual = 3.5, Large = 5;

    /// <summary>Columns, mm from the left of the sheet.</summary>
    const double What = HalfPages.Left + 9, WhatEnd = 134, CountOut = 146, Back = 150, Remark = 166;

    /// <param name="vehicle">Its name: what the firm should say when it calls.</param>
    /// <returns>A4 sheets, upright, two copies on each.</returns>
    public static ImmutableArray<Sheet> Sheets(Consignment box, string firm, string vehicle, DateOnly printed)
    {
        var title = $"{firm}, out on {box.Out:yyyy-MM-dd}";
        return HalfPages.Sheets(title,
            new(Opening(box, firm, vehicle, printed), Head(), box.Lines.OrderBy(l => l.Number).SelectMany(Row), Closing(box)),
            "Copy that stays", "Copy for the box");
    }

    static IEnumerable<PrintedLine> Opening(Consignment box, string firm, string vehicle, DateOnly printed)
    {
        const double left = HalfPages.Left, right = HalfPages.Right;
        foreach (var line in PrintedLine.Wrapped($"To {firm}, for {box.Trade.Words()}", Large, left, right)) yield return line;
        foreach (var line in PrintedLine.Wrapped(Facts(box, vehicle, printed), Small, left, right, Tone.Quiet)) yield return line;
        yield return PrintedLine.Space(1);
        foreach (var line in PrintedLine.Wrapped(box.Wanted, Usual, left, right)) yield return line;
        yield return PrintedLine.Space(2);
    }

    static string Facts(Consignment box, string vehicle, DateOnly printed)
    {
        var pictures = box.Lines.Sum(l => l.Pictures.Length);
        return string.Create(CultureInfo.InvariantCulture,
            $"From: {vehicle}. Out on {box.Out:yyyy-MM-dd}; {(box.ExpectedBack is { } back ? $"expected back on {back:yyyy-MM-dd}" : "no date was given")}; {(box.Quoted is { } price ? $"quoted {price}" : "no price was given")}. {box.Lines.Sum(l => l.Count)} pieces, {pictures} {(pictures == 1 ? "photograph" : "photographs")} kept. Printed {printed:yyyy-MM-dd}.");
    }

    static ImmutableArray<PrintedLine> Head() =>
    [
        PrintedLine.Of(
            PrintedLine.At(What, "what, finish, what stays bare", Small, Tone.Quiet), PrintedLine.At(CountOut, "out", Small, Tone.Quiet, Anchor.Right),
            PrintedLine.At(Back, "back", Small, Tone.Quiet), PrintedLine.At(Remark, "damage, remarks", Small, Tone.Quiet)),
        PrintedLine.Rule(HalfPages.Left, HalfPages.Right, Stroke.Thin),
    ];

    static IEnumerable<PrintedLine> Row(ConsignmentLine line)
    {
        var what = Fit.Lines(line.What, Usual, WhatEnd - What);
        yield return PrintedLine.Of(
            PrintedLine.At(HalfPages.Left, $"{line.Number}", Usual), PrintedLine.At(What, what[0], Usual),
            PrintedLine.At(CountOut, $"{line.Count}", Usual, anchor: Anchor.Right)).With(top => Blanks(top - 5.5));
        foreach (var more in what.Skip(1)) yield return PrintedLine.Of(PrintedLine.At(What, more, Usual));
        foreach (var finish in PrintedLine.Wrapped(line.Finish, Small, What, WhatEnd)) yield return finish;
        if (line.Masking.Trim().Length > 0)
            foreach (var bare in PrintedLine.Wrapped($"stays bare: {line.Masking}", Small, What, WhatEnd, Tone.Warn)) yield return bare;
        yield return PrintedLine.Space(2);
    }

    /// <summary>Where the count and the remark of the return are written by hand.</summary>
    static IEnumerable<Mark> Blanks(double y) =>
    [
        new LineMark(new(Back, y), new(Remark - 4, y), Layers.Frame, Stroke.Thin),
        new LineMark(new(Remark, y), new(HalfPages.Right, y), Layers.Frame, Stroke.Thin),
    ];

    static IEnumerable<PrintedLine> Closing(Consignment box)
    {
        yield return PrintedLine.Rule(HalfPages.Left, HalfPages.Right, Stroke.Thin);
        yield return PrintedLine.Space(5);
        yield return PrintedLine.Of(
            PrintedLine.At(HalfPages.Left, "counted out by .....................", Small), PrintedLine.At(78, "taken in by .....................", Small),
            PrintedLine.At(138, "counted back by .....................", Small));
        yield return PrintedLine.Space(2);
        foreach (var caution in OutCautions.For(box)) yield return PrintedLine.Together([.. PrintedLine.Wrapped($"! {caution}", Small, HalfPages.Left, HalfPages.Right, Tone.Warn)]);
        foreach (var line in PrintedLine.Wrapped("Cautions are of common practice: local codes, the makers' sheets and licensed practice decide.", Small, HalfPages.Left, HalfPages.Right, Tone.Quiet)) yield return line;
    }
}
