using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.FromIntent;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.DrawPart;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths.Units;
using WitnessMark.PrintRoom;

namespace WitnessMark.FrontOffice.FindIntent;

/// <summary>A measured plan to be read as the draughtsman meant it.</summary>
public sealed record IntentRequest(Sample Sample, Plan Plan)
{
    public IntentWish Wish { get; init; } = new();
}

/// <summary>What was found, and what to be careful of.</summary>
public sealed record IntentResult(Sample Sample, IntentPlan Intent)
{
    public ImmutableArray<string> Cautions => Intent.Cautions;

    /// <summary>One JSON object, mm and radians; the fields are listed in docs/guide/intent.md.</summary>
    public string ToJson() => IntentJson.Write(this);
}

/// <summary>The drawing of the part as meant, and the 1:1 template.</summary>
public sealed record IntentDrawn(string Name, DetailDrawing Drawing, Sheet Template, ImmutableArray<string> Cautions)
{
    public IEnumerable<PrintOut> Files(PrintRoom.Paper.PaperSize paper, DateTimeOffset? created) =>
    [
        PrintOut.Pdf($"{Name}-meant", Drawing.Sheets, created),
        PrintOut.Svg($"{Name}-meant", Drawing.Sheets[0]),
        PrintOut.Dxf($"{Name}-meant", Template),
        PrintOut.Template($"{Name}-meant-template", Template, paper, created),
    ];
}

/// <summary>From the true plan to what was meant, and from there to a drawing.</summary>
public static class FindIntent
{
    /// <exception cref="Maths.RefusedException">The plan has not settled or is too large, or a pattern is named that is not there.</exception>
    public static IntentResult Run(IntentRequest request, IProgress<IntentProgress>? progress = null, CancellationToken stop = default) =>
        new(request.Sample, Intention.Find(request.Plan, request.Wish, progress, stop));

    /// <exception cref="Maths.RefusedException">The outline does not close, or a size was not read.</exception>
    public static IntentDrawn Draw(IntentResult found, TitleFields title, LengthStyle? style = null)
    {
        var part = MeantPart.Of(found.Intent, found.Sample, Writings.Of(style ?? LengthStyle.Millimetres()));
        var named = title.MeasuredFrom.Length > 0 ? title : title with { MeasuredFrom = found.Sample.Id };
        var drawing = DetailDrawing.Draw(part.Part, named, new DrawingOptions { Writing = part.Writing, Knowledge = part.Knowledge });
        return new(found.Sample.Id, drawing, Template.Draw(part.Part, named.Title), [.. found.Cautions, .. drawing.Cautions]);
    }
}
