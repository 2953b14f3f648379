using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.ReturnLoan;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using static WitnessMark.Tests.FrontOffice.ReturnLoan.Lent;

namespace WitnessMark.Tests.FrontOffice.ReturnLoan;

public sealed class LenderZipTests
{
    [Theory]
    [InlineData("dynamo-plate.csv", "README.txt readings.csv reading-sheet.csv plan.json plan.svg drawing.pdf outline.dxf manifest.sha256")]
    [InlineData("lamp-bracket.csv", "README.txt readings.csv reading-sheet.csv folded.json plan.json plan.svg drawing.pdf outline.dxf manifest.sha256")]
    [InlineData("headlamp-bracket.csv", "README.txt readings.csv reading-sheet.csv plan.json plan.svg manifest.sha256")]
    [InlineData("stud.csv", "README.txt readings.csv sizes.csv sizes.txt manifest.sha256")]
    [Truth(Grade.Property, "every file is named in the letter and its sum is right; the same records make the same bytes")]
    public void Everything_measured_is_in_one_file(string sheet, string names)
    {
        var request = Demo(sheet);
        var zip = LenderZip.Of(request, LoanPapers.Of(request), []);
        var files = Unpacked(zip.Bytes);
        Assert.Equal(names.Split(' '), files.Keys);
        var letter = Encoding.UTF8.GetString(files["README.txt"]);
        Assert.Contains("Lent by Wendeline Orrick", letter);
        Assert.All(files.Keys.Skip(1), f => Assert.Matches($"(?m)^  {f} +\\S", letter));
        var sums = Encoding.UTF8.GetString(files["manifest.sha256"]).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split("  ")).ToDictionary(l => l[1], l => l[0]);
        Assert.Equal(files.Keys.SkipLast(1), sums.Keys);
        Assert.All(sums, s => Assert.Equal(s.Value, Convert.ToHexStringLower(SHA256.HashData(files[s.Key]))));
        Assert.Equal(zip.Bytes, LenderZip.Of(request, LoanPapers.Of(request), []).Bytes);
    }

    [Theory]
    [InlineData("dynamo-plate.csv")]
    [InlineData("lamp-bracket.csv")]
    [InlineData("headlamp-bracket.csv")]
    [Truth(Grade.Property, "what is written is read back the same")]
    public void The_reading_sheet_reads_back_as_the_records_stand(string sheet) => ReadsBack(Demo(sheet));

    [Fact]
    [Truth(Grade.Property, "what is written is read back the same, whatever a cell holds")]
    public void Commas_quotes_inch_marks_and_remarks_in_a_cell_do_no_harm()
    {
        var plate = Holes([("P1", -1.25, 0.1), ("P2", 40, 0), ("P3", 1.0 / 3, 1e-7)],
            Reading("P1", "P2", "1 5/8\"") with { Note = "\"near\" side, then # the rest\nof it" },
            Reading("P2", "P3", "40,5 mm") with { PlusMinus = "0.05" }, Reading("P1", "P3", "40.50; 40.52", instrument: "#2, the \"old\" one"),
            Reading("P1", "P9", "5"), Reading("photo-1", "", "± 0.5 %", "frame", ""), Reading("P1", "photo-1", "x 1.5 y 2.5", "picked", "") with { PlusMinus = "± 0.1" });
        var own = plate with
        {
            Sketch = plate.Sketch! with { Features = plate.Sketch.Features.Add(new("H1", "hole", "", "", 5, 5, null, 8, null) { Condition = "worn", Wear = 0.3 }) },
            Sample = plate.Sample with { Title = "Plate, \"upper\"; the #1" },
            Instruments = [new OwnedInstrument(Guid.NewGuid(), "#2, the \"old\" one", 0.05, 0.1, 0.0333333333, false), new OwnedInstrument(Guid.NewGuid(), "bevel", 0.0174532925199433, 0, 0.001, true)],
        };
        ReadsBack(own);
        Assert.Contains("\n# does not count: centre distance,P1,P9", Sheet(own));
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "the size sheet's own reader against the stores' entries")]
    public void The_sheet_of_sizes_reads_back_too()
    {
        var stud = Demo("stud.csv");
        var written = LoanPapers.Of(stud).Files.Single(f => f.FileName == "sizes.csv").Bytes;
        Assert.Equal(StoredSizes.Of(stud.History.Standing).Value.SelectMany(q => q.Measurements), SizeSheet.Read(written).Value.SelectMany(q => q.Measurements));
    }

    [Fact]
    [Truth(Grade.Property, "RFC 4180: every cell quoted, quotes doubled; no cell begins like a formula; the withdrawn stay on record")]
    public void Readings_stand_as_typed()
    {
        var plate = Holes([("P1", 0, 0), ("P2", 40, 0)], Reading("P1", "P2", "1 5/8\"") with { Note = "=1+1" }, Reading("P1", "P2", "41.3"));
        var gone = plate with { History = new(plate.History.Readings, [new Withdrawal(Guid.NewGuid(), plate.History.Readings[1].Id, "slipped", plate.History.Readings[1].TakenAt, "bench")]) };
        var rows = Encoding.UTF8.GetString(LoanPapers.Of(gone).Files.Single(f => f.FileName == "readings.csv").Bytes).TrimStart('\uFEFF').Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("\"1\",\"centre distance\",\"P1\",\"P2\",\"1 5/8\"\"\",\"\",\"calliper\",\"'=1+1\",\"2031-05-02 19:30\",\"\",\"\"", rows[1]);
        Assert.EndsWith("\"2031-05-02 19:30\",\"2031-05-02 19:30\",\"slipped\"", rows[2]);
    }

    [Fact]
    [Truth(Grade.Published, "ISO/IEC 15948 (PNG), 11.3.3.3: a tEXt chunk carries text beside the pixels")]
    public void Photographs_go_without_what_the_camera_wrote_and_a_broken_one_stays_behind()
    {
        var png = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==");
        // Behind the head (8 + 25 bytes) a chunk of text; the sum is not looked at here.
        byte[] noted = [.. png[..33], 0, 0, 0, 21, .. "tEXtSerial\0FB-4711-SECRET"u8, 1, 2, 3, 4, .. png[33..]];
        var request = Demo("headlamp-bracket.csv");
        var zip = LenderZip.Of(request, LoanPapers.Of(request), [new Picture("a", "image/png", noted), new Picture("b", "image/png", noted.AsMemory(0, 40))]);
        var files = Unpacked(zip.Bytes);
        Assert.Equal(png, files["photograph-1.png"]);
        Assert.DoesNotContain("photograph-2.png", files.Keys);
        Assert.Contains("A photograph is left out: ", Encoding.UTF8.GetString(files["README.txt"]));
        Assert.All(files.Values, f => Assert.DoesNotContain("FB-4711", Encoding.Latin1.GetString(f)));
    }

    static void ReadsBack(LoanRequest request)
    {
        var stored = StoredSample.Of(request.Sample, request.Sketch, request.History.Standing, request.Instruments).Sample!;
        var read = SampleFile.Read(Sheet(request)).Value;
        Assert.Equal(stored.Title, read.Title);
        Assert.Equal(stored.Readings, read.Readings);
        Assert.Equal(stored.Frames, read.Frames);
        Assert.Equal(stored.Features.Select(f => f with { Sketch = null }), read.Features.Select(f => f with { Sketch = null }));
        Assert.All(stored.Features.Zip(read.Features), p => Assert.True((p.First.Sketch is null) == (p.Second.Sketch is null) && ((p.First.Sketch ?? default) - (p.Second.Sketch ?? default)).Length < 1e-9));
    }

    static string Sheet(LoanRequest request) => Encoding.UTF8.GetString(LoanPapers.Of(request).Files.Single(f => f.FileName == "reading-sheet.csv").Bytes);

    static Dictionary<string, byte[]> Unpacked(byte[] bytes)
    {
        using var zip = new ZipArchive(new MemoryStream(bytes));
        var files = new Dictionary<string, byte[]>();
        foreach (var entry in zip.Entries)
        {
            using var to = new MemoryStream();
            using var from = entry.Open();
            from.CopyTo(to);
            files.Add(entry.FullName, to.ToArray());
        }
        return files;
    }
}
