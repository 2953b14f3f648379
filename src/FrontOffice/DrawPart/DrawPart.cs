using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.FromPlan;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Drafting.Picture;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths.Units;
using WitnessMark.PrintRoom;

namespace WitnessMark.FrontOffice.DrawPart;

/// <summary>A flat part to be drawn from its plan.</summary>
public sealed record DrawRequest(Sample Sample, Plan Plan, TitleFields Title)
{
    /// <summary>What is believed of the vehicle's origin, for the made-to sizes.</summary>
    public OriginPrior Prior { get; init; } = OriginPrior.Unknown;

    /// <summary>How lengths are written.</summary>
    public LengthStyle Style { get; init; } = LengthStyle.Millimetres();

    /// <summary>Corner or hole that positions are counted from; null leaves the choice to the drawing office.</summary>
    public string? Datum { get; init; }
}

/// <summary>The drawing, the 1:1 template, the picture of the plan with its ±, and what to be careful of.</summary>
public sealed record DrawResult(string Name, FlatPart Part, DetailDrawing Drawing, Sheet Template, Sheet Picture, MadeSizes MadeTo, ImmutableArray<string> Cautions)
{
    /// <summary>Drawing as PDF and SVG, template for the cutter as DXF and for paper as tiled PDF, picture as SVG.</summary>
    public IEnumerable<PrintOut> Files(PrintRoom.Paper.PaperSize paper, DateTimeOffset? created) =>
    [
        PrintOut.Pdf($"{Name}-drawing", Drawing.Sheets, created),
        PrintOut.Svg($"{Name}-drawing", Drawing.Sheets[0]),
        PrintOut.Dxf($"{Name}", Template),
        PrintOut.Template($"{Name}-template", Template, paper, created),
        PrintOut.Svg($"{Name}-plan", Picture),
    ];
}

/// <summary>From the true plan to a dimensioned drawing with the made-to size beside each measured value.</summary>
public static class DrawPart
{
    /// <exception cref="Maths.RefusedException">The plan cannot be drawn: it has not settled, or its outline does not close.</exception>
    public static DrawResult Run(DrawRequest request)
    {
        var (plan, sample) = (request.Plan, request.Sample);
        // The first laying gives the ± of every span, which the made-to sizes then need.
        var laid = PlanPart.Of(plan, sample, origin: request.Datum);
        var made = MadeSizes.Of(plan.Believed, laid.Knowledge.Std, request.Prior);
        var drawn = PlanPart.Of(plan, sample, new Decisions { MadeTo = made.OfFeature, MadeToBetween = made.Between }, request.Datum);
        var title = request.Title.MeasuredFrom.Length > 0 ? request.Title : request.Title with { MeasuredFrom = sample.Id };
        var drawing = DetailDrawing.Draw(drawn.Part, title, new DrawingOptions { Writing = Writings.Of(request.Style), Knowledge = drawn.Knowledge });
        return new(sample.Id, drawn.Part, drawing, Template.Draw(drawn.Part, title.Title), PlanPicture.Draw(plan, sample), made, [.. drawn.Cautions, .. drawing.Cautions]);
    }
}
