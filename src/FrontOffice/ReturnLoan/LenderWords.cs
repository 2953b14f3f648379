using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>The letter that lies on top of everything measured: what it is, what each file holds, and how far to trust it.</summary>
static class LenderWords
{
    static readonly ImmutableArray<(string Begins, string Says)> Known =
    [
        ("readings.csv", "every reading as it was written down, with its time; withdrawn ones too. Opens in a spreadsheet."),
        ("reading-sheet.csv", "the readings that count, and where the features were sketched; the program reads it back (wmark survey solve)."),
        ("sizes.csv", "sizes measured to find out what things were made to (wmark made-to sheet)."),
        ("sizes.txt", "what those things were made to, with the odds."),
        ("folded.json", "the folded part: faces, bends and lengths as typed."),
        ("plan.json", "the true plan: places, distances and sizes in mm, each with its standard deviation."),
        ("plan.svg", "the plan as a picture, with the ± of each place. Opens in a browser."),
        ("drawing.pdf", "the dimensioned drawing, to print at 100 %."),
        ("outline.dxf", "the outline and holes at true size, for a cutter or another drawing program."),
        ("solid-sheet.csv", "the survey in space as it was typed; the program reads it back (wmark survey solid)."),
        ("solid.json", "the true shape in space: places, sizes and angles in mm and radians, each with its standard deviation."),
        ("solid-drawing.", "the shape in square views, with its lengths and setting angles: to print, to look at, or for another drawing program."),
        ("solid-", "the shape as a picture. Opens in a browser."),
        ("photograph-", "as taken, but without the place where it was taken and without the camera's serial numbers."),
    ];

    public static string Of(LoanRequest request, LoanPapers papers, ImmutableArray<string> files)
    {
        var text = new StringBuilder();
        void Line(string line = "") => text.Append(line).Append('\n');

        Line($"{request.Sample.Title}{(request.Part.Length > 0 ? $" ({request.Part})" : "")}: everything that was measured of it");
        Line();
        if (request.Sample.Loan is { } loan) Line(string.Create(CultureInfo.InvariantCulture, $"Lent by {loan.Lender} on {loan.Lent:yyyy-MM-dd}, due back on {loan.Due:yyyy-MM-dd}. Thank you."));
        if (Taken(request) is { } taken) Line(taken);
        Line("Lengths are mm unless an inch mark or another unit stands by them. A ± holds in 19 of 20 cases; a standard deviation is half of it.");
        Line();
        Line("The files");
        foreach (var file in files) Line($"  {file,-20} {Known.FirstOrDefault(k => file.StartsWith(k.Begins, StringComparison.Ordinal)).Says}");
        Line($"  {LenderZip.Manifest,-20} a check sum of every file (sha256sum --check {LenderZip.Manifest}).");
        foreach (var lack in papers.Lacks.Prepend("").Where(_ => papers.Lacks.Length > 0)) Line(lack);
        Line();
        Line(papers.Standing.Words);
        foreach (var point in papers.Standing.Open) Line($"  Open: {point.Words}");
        foreach (var point in papers.Standing.Points.Where(p => p.NotNeeded is not null)) Line($"  Left, because {point.NotNeeded!.Trim().TrimEnd('.')}: {point.Words}");
        foreach (var caution in papers.Standing.Cautions) Line(caution);
        return text.ToString();
    }

    static string? Taken(LoanRequest request)
    {
        var times = request.History.Standing.Select(r => r.TakenAt).Order().ToList();
        if (times.Count == 0) return null;
        var (first, last) = (Day(times[0]), Day(times[^1]));
        return $"{ReturnLoan.Counted(times.Count, "reading")}, taken {(first == last ? $"on {first}" : $"from {first} to {last}")}.";
    }

    static string Day(DateTimeOffset at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
