using System.Globalization;
using System.Text;
using CsCheck;
using CsvHelper;
using CsvHelper.Configuration;
using WitnessMark.Maths;
using WitnessMark.Stores.Intake;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Intake;

public sealed class ListReaderTests
{
    const string Head = "Group,Description,Part No,Side,Qty,Remarks\n";

    [Fact]
    [Truth(Grade.Published, "RFC 4180, section 2, rules 5 to 7: quoted cells hold commas, line breaks and doubled quotes")]
    public async Task Quoted_cells_hold_separators_line_breaks_and_quotes()
    {
        var list = await Lists.Read(Head + "Body,\"Wing, \"\"front\"\"\",W-1,LH,1,\"split\r\nand bent\"\r\nBody,Door 3 5/16\",D-1,R.H.,2 off,\r\n");
        Assert.Empty(list.Refused);
        Assert.Equal(["Wing, \"front\"", "Door 3 5/16\""], list.Parts.Select(p => p.Name));
        Assert.Equal("split\r\nand bent", list.Parts[0].Condition);
        Assert.Equal((4, Hand.RH, 2), (list.Parts[1].Line, list.Parts[1].Hand, list.Parts[1].Quantity));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "a spreadsheet's list has a merged title over the heads; German heads and the decimal comma; Windows-1252 bytes")]
    public async Task A_title_above_the_head_row_is_passed_over()
    {
        var bytes = CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes(
            "Teileliste;;;;;\r\nPos.;Benennung;Menge;Seite;Baugruppe;Bemerkung\r\n1;Türgriff;2,0;N/S;Tür;\"£12,\r\naußen\"\r\n;;;;;\r\n2;Mutter;zwei;;;\r\n");
        var list = await Lists.Read(bytes, settings: new(InSystem: "Karosserie", Driver: Hand.RH));
        Assert.Equal((1, "Windows-1252", "Benennung"), (list.Titles, list.Encoding, list.Head[1]));
        var part = Assert.Single(list.Parts);
        Assert.Equal((3, "Türgriff", 2, Hand.LH, "Tür", "£12,\r\naußen"), (part.Line, part.Name, part.Quantity, part.Hand, part.Assembly, part.Condition));
        Assert.StartsWith("line 6, column 3 (Menge): \"zwei\"", Assert.Single(list.Refused).Sentence);

        var plain = await Lists.Read("Wing;1\nDoor;2\n", settings: new(Map: new(false, [ListField.Part, ListField.Quantity]), InSystem: "Body"));
        Assert.Equal((0, 2), (plain.Titles, plain.Parts.Length));
    }

    [Fact]
    [Truth(Grade.Property, "a list with a doubled row, taken twice, changes nothing the second time: the first of the two rows counts both times")]
    public async Task A_doubled_row_changes_nothing_when_the_list_is_taken_again()
    {
        const string text = Head + "Body,Wing,W-1,LH,1,split\nBody,Wing,W-1,LH,2,doubled\n";
        var first = await Lists.Read(text);
        var tree = Lists.Empty.After(ListIntake.Changes(first, Lists.Empty, new Dictionary<int, DuplicateAnswer>()));
        var again = await Lists.Read(text, tree);
        Assert.Equal([DuplicateAnswer.Skip, DuplicateAnswer.Skip], again.Duplicates.Select(d => d.Proposed));
        Assert.Equal(0, ListIntake.Changes(again, tree, new Dictionary<int, DuplicateAnswer>()).Count);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "CsvHelper 33.1.0 reads the same cells out of well-formed texts")]
    public void Cells_are_those_of_another_reader()
    {
        var cell = Gen.String[Gen.Char["ab,;\"\n é3"], 0, 6].Select(s => s.Trim());
        Gen.Select(cell.Array[3].Array[1, 6], Gen.Const(',')).Sample((rows, separator) =>
        {
            var text = string.Join("\r\n", rows.Select(r => string.Join(separator, r.Select(c => $"\"{c.Replace("\"", "\"\"")}\""))));
            using var other = new CsvParser(new StringReader(text), new CsvConfiguration(CultureInfo.InvariantCulture) { HasHeaderRecord = false, IgnoreBlankLines = false });
            var read = Delimited.Read(text, separator).ToList();
            foreach (var row in read)
            {
                Assert.True(other.Read());
                Assert.Equal(other.Record!.Select(c => c.Trim()), row.Cells.AsEnumerable());
            }
            Assert.Equal(rows.Length, read.Count);
        }, iter: 2000);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "the code pages of .NET (CodePagesEncodingProvider) for every byte of Windows-1252 but the zero, by which a file is taken for no text")]
    public void Every_byte_of_Windows_1252_is_read()
    {
        // The second byte is not zero, and no UTF-8 begins with 0xFF 0x20.
        byte[] bytes = [0xFF, 0x20, .. Enumerable.Range(1, 255).Select(b => (byte)b)];
        Assert.Equal(new ListText(CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetString(bytes), "Windows-1252"), ListText.Read(bytes).Value);
    }

    [Fact]
    [Truth(Grade.Published, "byte order marks: the Unicode standard, 23.8; Windows-1252 0xE9 is é, 0xBD is ½ (WHATWG encoding index)")]
    public async Task The_encoding_is_found_and_told()
    {
        const string text = "part;system;qty\nBügel ½;Body;2\n";
        foreach (var (bytes, told) in new (byte[], string)[]
        {
            (Encoding.UTF8.GetBytes(text), "UTF-8"),
            ([.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(text)], "UTF-8"),
            ([.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)], "UTF-16"),
            ([.. Encoding.BigEndianUnicode.GetPreamble(), .. Encoding.BigEndianUnicode.GetBytes(text)], "UTF-16"),
            (Encoding.Unicode.GetBytes(text), "UTF-16"),
            ([.. "part;system;qty\nB"u8, 0xFC, .. "gel "u8, 0xBD, .. ";Body;2\n"u8], "Windows-1252"),
        })
        {
            var list = await Lists.Read(bytes);
            Assert.Equal((told, "Bügel ½", ';'), (list.Encoding, Assert.Single(list.Parts).Name, list.Separator));
        }
    }

    [Theory]
    [InlineData("Body,Wing,W-1,LH,none,", "line 3, column 5 (Qty)", "none")]
    [InlineData("Body,Wing,W-1,LH,0,", "line 3, column 5 (Qty)", "0")]
    [InlineData("Body,Wing,W-1,LH,\"1,000\",", "line 3, column 5 (Qty)", "thousands")]
    [InlineData("Body,Wing,W-1,LH,2.5,", "line 3, column 5 (Qty)", "2.5")]
    [InlineData("Body,Wing,W-1,top,1,", "line 3, column 4 (Side)", "top")]
    [InlineData("Body,Wing,W-1,both,1,", "line 3, column 4 (Side)", "one row for each")]
    [InlineData("Body,Wing,W-1,N/S,1,", "line 3, column 4 (Side)", "driver")]
    [InlineData("Body,,W-1,LH,1,", "line 3, column 2 (Description)", "name the part")]
    [InlineData(",Wing,W-1,LH,1,", "line 3, column 1 (Group)", "one for the whole list")]
    [InlineData("Body,Wing,W-1,LH,1,split,badly", "line 3, column 7", "badly")]
    [InlineData("Body;Wing;W-1;LH;1;", "line 3, separator", "rest of the list")]
    [InlineData("Body,\"3/8\" bolt,W-1,LH,1,", "line 3, column 2", "double each quote")]
    [InlineData("Body,\"Wing,W-1,LH,1,", "line 3, column 2", "not closed")]
    [Truth(Grade.Property, "a bad row is refused by line and column, and the good rows before and after it are kept")]
    public async Task A_bad_row_costs_one_row(string row, string where, string word)
    {
        var list = await Lists.Read($"{Head}Body,Door,D-1,LH,1,\n{row}\nBody,Roof,R-1,,1,\n");
        var refused = Assert.Single(list.Refused).Sentence;
        Assert.StartsWith(where, refused);
        Assert.Contains(word, refused);
        Assert.Equal(["Door", "Roof"], list.Parts.Select(p => p.Name));
    }

    [Theory]
    [InlineData("N/S", Hand.RH, Hand.LH)]
    [InlineData("off side", Hand.RH, Hand.RH)]
    [InlineData("nearside", Hand.LH, Hand.RH)]
    [InlineData("O.S.", Hand.LH, Hand.LH)]
    [Truth(Grade.CommonPractice, "the off side is the driver's, the near side the kerb's")]
    public async Task Near_and_off_side_follow_the_driver(string side, Hand driver, Hand hand) =>
        Assert.Equal(hand, Assert.Single((await Lists.Read($"{Head}Body,Door,D-1,{side},1,\n", settings: new(Driver: driver))).Parts).Hand);

    [Fact]
    [Truth(Grade.Property, "columns without a head row are named by number; references in several columns are kept together")]
    public async Task Columns_are_mapped_by_the_person()
    {
        const string text = "Plate 4\t12\tBush\t4\nPlate 4\t13\tPin\t2,0\n";
        var guessed = await Lists.Read(text);
        Assert.Contains("names the part", guessed.Missing!.Sentence);
        Assert.Equal('\t', guessed.Separator);
        var map = guessed.Map.With("1=reference, 2=reference, 3=part, 4=quantity", guessed.Head).Value;
        var list = await Lists.Read(text, settings: new(Map: map, InSystem: "Springs"));
        Assert.Equal(["Plate 4; 12", "Plate 4; 13"], list.Parts.Select(p => p.Reference));
        Assert.Equal([4, 2], list.Parts.Select(p => p.Quantity!.Value));
        Assert.Contains("give one of", guessed.Map.With("3=colour", guessed.Head).Refusal!.Sentence);
        Assert.Contains("columns are 1, 2, 3, 4", guessed.Map.With("9=part", guessed.Head).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "the demonstration's own list reads, remarks passed over, one part for each row")]
    public async Task The_demonstration_list_reads()
    {
        var list = await Lists.Read(File.ReadAllBytes(Path.Combine(Demo.Folder, "parts.csv")));
        Assert.Empty(list.Refused);
        Assert.Equal(Demo.Read().Parts.Select(p => (p.Name, p.Hand, p.Quantity, p.Reference, p.Route)), list.Parts.Select(p => (p.Name, p.Hand, p.Quantity!.Value, p.Reference, p.Route)));
    }

    [Fact]
    [Truth(Grade.Property, "no text is a crash; what is no list is refused in a sentence")]
    public async Task Whatever_the_bytes_they_are_read_or_refused()
    {
        foreach (var bytes in new byte[][] { [], "\n\n"u8.ToArray(), [1, 0, 0, 0, 7], [0xEF, 0xBB, 0xBF, 0xFF], [0xFF, 0xFE] })
            await Assert.ThrowsAsync<RefusedException>(() => Lists.Read(bytes));
        await Gen.String[Gen.Char["partsyem,;\"\n\r\t #|0129é"], 1, 120].SampleAsync(async text =>
        {
            try
            {
                var list = await Lists.Read("part,qty\n" + text, settings: new(InSystem: "Body"));
                ListIntake.Changes(list, Lists.WithWing);
            }
            catch (RefusedException)
            {
            }
        }, iter: 2000);
    }

    [Fact]
    [Truth(Grade.Property, "100,000 rows, one in ten with an unclosed quote, are read to the end, with progress; a stop is heard")]
    public async Task A_very_long_list_is_read_to_the_end()
    {
        var text = Head + string.Concat(Enumerable.Range(0, 100_000).Select(i => i % 10 == 0 ? $"Body,\"Part {i},R-{i},,1,\n" : $"Body,Part {i},R-{i},,1,\n"));
        var shares = new List<double>();
        var list = await ListReader.Preview(Encoding.UTF8.GetBytes(text), Lists.Empty, new(), Lists.Today, new Heard(shares), TestContext.Current.CancellationToken);
        Assert.Equal((90_000, 10_000), (list.Parts.Length, list.Refused.Length));
        Assert.True(shares.Count > 10 && shares.SequenceEqual(shares.Order()) && shares[^1] == 1);
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        await Assert.ThrowsAsync<OperationCanceledException>(() => ListReader.Preview(Encoding.UTF8.GetBytes(text), Lists.Empty, new(), Lists.Today, null, stop.Token));
    }

    sealed class Heard(List<double> shares) : IProgress<double>
    {
        public void Report(double value) => shares.Add(value);
    }
}
