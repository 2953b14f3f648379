using System.Collections.Immutable;
using System.Text;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Drafting.Picture;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>Everything measured of a sample, as files; photographs are added when it is packed (<see cref="LenderZip"/>).</summary>
/// <param name="Files">Readings, sheets, plan and drawing.</param>
/// <param name="Lacks">What could not be made of it and why, a sentence each.</param>
public sealed record LoanPapers(LoanStanding Standing, ImmutableArray<PrintOut> Files, ImmutableArray<string> Lacks)
{
    public static LoanPapers Of(LoanRequest request, CancellationToken stop = default)
    {
        var result = ReturnLoan.Run(request, stop);
        var lacks = ImmutableArray.CreateBuilder<string>();
        ImmutableArray<PrintOut> files = [.. Typed(request, result, lacks), .. Plan(request, result, lacks), .. Drawing(request, result, lacks), .. InSpace(request, result, lacks)];
        return new(result.Standing, files, lacks.ToImmutable());
    }

    static IEnumerable<PrintOut> Typed(LoanRequest request, LoanResult result, ImmutableArray<string>.Builder lacks)
    {
        yield return new("readings.csv", "text/csv", ReadingsCsv.Write(request.History));
        if (result.Stored.Sample is not null)
        {
            var sheet = SheetText.Readings(Slug(request.Sample.Title), request, result.Stored.Refused.Select(r => r.Row).ToHashSet());
            if (SampleFile.Read(sheet) is { Refusal: { } refusal }) lacks.Add($"The reading sheet is there but does not count as it stands: {refusal.Sentence}");
            yield return Text("reading-sheet.csv", "text/csv", sheet);
        }
        if (SheetText.Sizes(request) is { } sizes) yield return Text("sizes.csv", "text/csv", sizes);
        if (result.Sizes is { } told) yield return Text("sizes.txt", "text/plain", string.Concat(told.Members.Select(m => $"{m.Question.Label}: {m.Words}\n")));
        if (request.Folded is { Length: > 0 } folded) yield return Text("folded.json", "application/json", folded);
    }

    static IEnumerable<PrintOut> Plan(LoanRequest request, LoanResult result, ImmutableArray<string>.Builder lacks)
    {
        if (result.Measured is not { } measured)
        {
            if (result.Solid is null || result.Stored.Sample is { Readings.Length: > 0 }) lacks.Add("There is no plan: nothing of its shape has been read, or the readings make none.");
            return [];
        }
        var files = new List<PrintOut> { Text("plan.json", "application/json", measured.ToJson()) };
        Try("picture of the plan", lacks, () => files.Add(PrintOut.Svg("plan", PlanPicture.Draw(measured.Plan, Titled(request, measured)))));
        return files;
    }

    static IEnumerable<PrintOut> Drawing(LoanRequest request, LoanResult result, ImmutableArray<string>.Builder lacks)
    {
        if (result.Measured is not { } measured) return [];
        var files = new List<PrintOut>();
        Try("drawing", lacks, () =>
        {
            var drawn = DrawPart.DrawPart.Run(new(Titled(request, measured), measured.Plan, Title(request)) { Prior = Origins.Named(request.Origin) ?? OriginPrior.Unknown });
            files.AddRange([PrintOut.Pdf("drawing", drawn.Drawing.Sheets, LastRead(request)), PrintOut.Dxf("outline", drawn.Template)]);
        });
        return files;
    }

    /// <summary>A sheet that makes no shape goes to the lender too.</summary>
    static IEnumerable<PrintOut> InSpace(LoanRequest request, LoanResult result, ImmutableArray<string>.Builder lacks)
    {
        if (request.Solid is not { } sheet) return [];
        var files = new List<PrintOut> { Text("solid-sheet.csv", "text/csv", sheet) };
        if (result.Solid is not { } solid)
        {
            lacks.Add("There is no shape in space: its sheet makes none.");
            return files;
        }
        files.Add(Text("solid.json", "application/json", solid.ToJson()));
        Try("drawing of the shape in space", lacks, () =>
        {
            var drawn = DrawSolid.Run(solid, Title(request));
            files.AddRange(
            [
                PrintOut.Pdf("solid-drawing", drawn.Drawing.Sheets, LastRead(request)), PrintOut.Svg("solid-drawing", drawn.Drawing.Sheets[0]), PrintOut.Dxf("solid-drawing", drawn.Drawing.Sheets[0]),
                PrintOut.Svg("solid-wireframe", drawn.Wireframe), PrintOut.Svg("solid-pictorial", drawn.Pictorial),
            ]);
        });
        return files;
    }

    static void Try(string what, ImmutableArray<string>.Builder lacks, Action make)
    {
        try
        {
            make();
        }
        catch (RefusedException e)
        {
            lacks.Add($"There is no {what}: {e.Message}");
        }
    }

    static DrawingOffice.Survey.Sample Titled(LoanRequest request, MeasureResult measured) => measured.Sample with { Id = Slug(request.Sample.Title) };

    static TitleFields Title(LoanRequest request) => new(request.Sample.Title, "") { Date = LastRead(request) is { } at ? DateOnly.FromDateTime(at.Date) : null, MeasuredFrom = request.Sample.Title };

    /// <summary>The time of the last reading, and not today's: the same readings make the same files. A sheet in space tells none.</summary>
    static DateTimeOffset? LastRead(LoanRequest request) => request.History.Readings.Count == 0 ? null : request.History.Readings.Max(r => r.TakenAt);

    static PrintOut Text(string name, string media, string text) => new(name, media, Encoding.UTF8.GetBytes(text));

    /// <summary>Small letters, digits and dashes of a title, at most 40; no folder can hide in it.</summary>
    internal static string Slug(string title)
    {
        var plain = string.Concat(title.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
        var name = string.Join('-', plain.Split('-', StringSplitOptions.RemoveEmptyEntries));
        return name.Length == 0 ? "sample" : name[..Math.Min(name.Length, 40)].TrimEnd('-');
    }
}
