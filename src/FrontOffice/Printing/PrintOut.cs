using System.IO.Compression;
using System.Text;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Screen;

namespace WitnessMark.FrontOffice.Printing;

/// <summary>A file to hand to a person: a name without a folder, what it is, and its bytes.</summary>
public sealed record PrintOut(string FileName, string MediaType, byte[] Bytes)
{
    /// <summary>Sheets at true size, a page each.</summary>
    public static PrintOut Pdf(string name, IReadOnlyList<Sheet> sheets, DateTimeOffset? created) =>
        new($"{name}.pdf", "application/pdf", Paper(sheets, created));

    /// <summary>A drawing at 1:1 spread over pages of common paper.</summary>
    public static PrintOut Template(string name, Sheet sheet, PaperSize paper, DateTimeOffset? created) =>
        new($"{name}.pdf", "application/pdf", Paper(Tiles.Split(sheet, paper), created));

    public static PrintOut Svg(string name, Sheet sheet) =>
        new($"{name}.svg", "image/svg+xml", Encoding.UTF8.GetBytes(PrintRoom.Screen.Svg.Write(sheet, new SvgOptions(RealText: true))));

    public static PrintOut Dxf(string name, Sheet sheet) =>
        new($"{name}.dxf", "image/vnd.dxf", Encoding.ASCII.GetBytes(PrintRoom.Cutter.Dxf.Write(sheet)));

    /// <summary>The earliest time that a zip can say: none of it is dated by the clock, so that the same files make the same bytes.</summary>
    static readonly DateTimeOffset Undated = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Several files in one.</summary>
    public static PrintOut Zip(string name, IEnumerable<PrintOut> files)
    {
        using var whole = new MemoryStream();
        using (var zip = new ZipArchive(whole, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var file in files)
            {
                var entry = zip.CreateEntry(file.FileName);
                entry.LastWriteTime = Undated;
                using var bytes = entry.Open();
                bytes.Write(file.Bytes);
            }
        }
        return new($"{name}.zip", "application/zip", whole.ToArray());
    }

    static byte[] Paper(IReadOnlyList<Sheet> sheets, DateTimeOffset? created) => PrintRoom.Paper.Pdf.Write(sheets, new PdfOptions(Created: created));
}
