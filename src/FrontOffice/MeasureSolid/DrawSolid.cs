using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Drafting.Solid;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>The papers of a measured solid.</summary>
public sealed record SolidDrawn(string Name, SolidDrawing Drawing, Sheet Wireframe, Sheet Pictorial)
{
    /// <summary>Drawing as PDF, SVG and DXF; wireframe and pictorial as SVG.</summary>
    public IEnumerable<PrintOut> Files(DateTimeOffset? created) =>
    [
        PrintOut.Pdf($"{Name}-solid", Drawing.Sheets, created),
        PrintOut.Svg($"{Name}-solid", Drawing.Sheets[0]),
        PrintOut.Dxf($"{Name}-solid", Drawing.Sheets[0]),
        PrintOut.Svg($"{Name}-wireframe", Wireframe),
        PrintOut.Svg($"{Name}-pictorial", Pictorial),
    ];
}

/// <summary>From the true shape to a drawing in square views and its pictures.</summary>
public static class DrawSolid
{
    /// <exception cref="RefusedException">The adjustment has not settled, or nothing of the part has a place.</exception>
    public static SolidDrawn Run(SolidResult result, TitleFields title, Writing? writing = null)
    {
        var part = result.Part ?? throw new RefusedException(Refusal.Of("plan", result.Plan.Believed.Convergence.Words, "readings that settle are needed before it is drawn"));
        var head = title with { MeasuredFrom = title.MeasuredFrom.Length > 0 ? title.MeasuredFrom : result.Sample.Id };
        var options = SolidDrawing.Usual with { Writing = writing ?? Writing.Millimetres };
        return new(result.Sample.Id, SolidDrawing.Draw(part, head, options), Picture(result, SolidPictureOptions.Wireframe), Picture(result, SolidPictureOptions.Pictorial));
    }

    /// <summary>The shape seen from anywhere, with its doubtful readings and the one to take next drawn in.</summary>
    public static Sheet Picture(SolidResult result, SolidPictureOptions options)
    {
        var doubtful = result.Plan.Doubts.Indices.Select(i => result.Sample.Readings[i]).Select(r => (r.From, r.To, $"{r.Index + 1}?", Tone.Warn));
        var next = result.Next is { Enough: false, Readings: [var best, ..] } ? [(best.From, best.To, "next", Tone.Accent)] : Array.Empty<(string, string?, string, Tone)>();
        return SolidPicture.Draw(result.Part ?? throw new RefusedException(Refusal.Of("plan", result.Plan.Believed.Convergence.Words, "readings that settle are needed before it is drawn")),
            options with { Between = [.. doubtful, .. next] });
    }
}
