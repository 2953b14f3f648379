using System.Globalization;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Paper;

/// <summary>
/// Sheets as a PDF (ISO 32000-1) at true size, a page each: vectors only, black, no font needed to make or to read it.
/// Asks printers not to scale. The same sheets and options give the same bytes on the same runtime;
/// uncompressed, on every runtime. docs/decisions says why it is our own.
/// </summary>
public static class Pdf
{
    public const double PointsPerMm = 72 / 25.4;

    /// <summary>mm; the longest page side that readers must take, 14,400 points (ISO 32000-1, annex C).</summary>
    const double LongestSide = 5080;

    /// <exception cref="RefusedException">No sheet, a sheet too large for a page, or a mark that is no number.</exception>
    public static byte[] Write(IReadOnlyList<Sheet> sheets, PdfOptions? options = null)
    {
        options ??= PdfOptions.Default;
        if (sheets.Count == 0) throw new RefusedException(Refusal.Of("sheets", "", "a PDF needs at least one"));
        foreach (var sheet in sheets) Check(sheet);
        var file = new PdfFile(options.Compressed);
        var (catalog, tree) = (file.Reserve(), file.Reserve());
        var alphabet = new PdfAlphabet(file);
        var contents = sheets.Select(s => file.AddStream(Content(s, alphabet))).ToArray();
        var resources = file.Add(alphabet.Write());
        var pages = sheets.Select((s, i) => file.Add(
            $"<</Type/Page/Parent {tree} 0 R/MediaBox[0 0 {Points(s.Width)} {Points(s.Height)}]/Resources {resources} 0 R/Contents {contents[i]} 0 R>>"));
        file.Set(tree, $"<</Type/Pages/Count {sheets.Count}/Kids[{string.Join(' ', pages.Select(p => $"{p} 0 R"))}]>>");
        file.Set(catalog, $"<</Type/Catalog/Pages {tree} 0 R/ViewerPreferences<</PrintScaling/None/PickTrayByPDFSize true/DisplayDocTitle true>>>>");
        var title = options.Title.Length > 0 ? options.Title : sheets[0].Title;
        return file.ToBytes(catalog, file.Add($"<</Title {PdfFile.Text(title)}/Producer(Witness Mark){Created(options)}>>"));
    }

    static void Check(Sheet sheet)
    {
        Guard.Check(sheet);
        if (Math.Max(sheet.Width, sheet.Height) > LongestSide)
            throw new RefusedException(Refusal.Of($"sheet {sheet.Title}", $"{Figures.Of(sheet.Width, 1)} x {Figures.Of(sheet.Height, 1)} mm",
                "a PDF page is at most 5080 mm a side: split it into tiles"));
    }

    static string Content(Sheet sheet, PdfAlphabet alphabet)
    {
        var page = new PdfPage(alphabet);
        foreach (var mark in sheet.Marks) page.Draw(mark);
        return page.Content;
    }

    static string Created(PdfOptions options) => options.Created is { } at
        ? $"/CreationDate(D:{at.UtcDateTime.ToString("yyyyMMddHHmmss", CultureInfo.InvariantCulture)}Z)"
        : "";

    static string Points(double mm) => Figures.Of(mm * PointsPerMm, 4);
}
