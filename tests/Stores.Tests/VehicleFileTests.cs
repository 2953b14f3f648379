using CsCheck;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests;

public sealed class VehicleFileTests
{
    const string Vehicle = "name,maker,model,year,notes\nvan,Invented,One,1934,\"red, once\"\n";
    const string PartsHead = "system,part,reference,hand,quantity,condition,route,reason,decided\n";
    const string SamplesHead = "part,hand,title,origin,lender,lent,due,wanted,sheet\n";
    const string Wing = "Body,Wing,W-1,LH,1,split,refurbish,worth it,2031-05-04\n";

    [Fact]
    [Truth(Grade.Property, "the demonstration vehicle is what the README says: five systems, about 40 parts, one loan with two readings missing")]
    public void The_demonstration_vehicle_reads()
    {
        var demo = Demo.Read();
        Assert.Equal(5, demo.Systems.Length);
        Assert.InRange(demo.Parts.Length, 38, 44);
        Assert.All(demo.Sheets.Values, sheet => Assert.True(File.Exists(Path.Combine(Demo.Folder, sheet)), sheet));
        var borrowed = Assert.Single(demo.Samples, s => s.Origin == SampleOrigin.Borrowed);
        Assert.Equal(2, borrowed.Wanted.Length);
        Assert.Contains(demo.Parts, p => p.Route is null);
        Assert.All(Enum.GetValues<Route>(), r => Assert.Contains(demo.Parts, p => p.Route?.Route == r));
    }

    [Fact]
    [Truth(Grade.Property, "the same text gives the same ids, another name another id")]
    public void Reading_twice_gives_the_same_rows()
    {
        Assert.Equal(Demo.Read().Parts, Demo.Read().Parts.AsEnumerable());
        Assert.Equal(Demo.Read().Parts.Length, Demo.Read().Parts.Select(p => p.Id).Distinct().Count());
    }

    [Fact]
    [Truth(Grade.Published, "RFC 9562, appendix A.4: version 5 of www.example.com in the DNS space")]
    public void A_named_id_follows_the_standard() =>
        Assert.Equal(new Guid("2ed6657d-e927-568b-95e1-2665a8aea6a2"),
            NamedId.Of(new Guid("6ba7b810-9dad-11d1-80b4-00c04fd430c8"), "www.example.com"));

    [Fact]
    [Truth(Grade.Published, "RFC 4180, section 2: quotes, doubled quotes, commas inside quotes")]
    public void Quoted_cells_hold_commas_and_quotes()
    {
        var file = VehicleFile.Read(Vehicle, PartsHead + "Body,\"Wing, \"\"the\"\" left\",3 5/16\" long,LH,1,,,,\n", SamplesHead).Value;
        Assert.Equal("red, once", file.Vehicle.Notes);
        Assert.Equal(("Wing, \"the\" left", "3 5/16\" long"), (file.Parts[0].Name, file.Parts[0].Reference));
    }

    [Theory]
    [InlineData("Body,Wing,W-1,LH,none,split,,,", "line 2, quantity", "none")]
    [InlineData("Body,Wing,W-1,LH,0,split,,,", "line 2, quantity", "0")]
    [InlineData("Body,Wing,W-1,left,1,split,,,", "line 2, hand", "left")]
    [InlineData("Body,Wing,W-1,LH,1,split,mend,why,2031-05-04", "line 2, route", "buy second-hand")]
    [InlineData("Body,Wing,W-1,LH,1,split,clean,why,4/5/31", "line 2, decided", "4/5/31")]
    [InlineData("Body,Wing,W-1,LH,1,split,clean,,2031-05-04", "line 2, reason", "needed")]
    [InlineData("Body,,W-1,LH,1,split,,,", "line 2, part name", "nothing")]
    [InlineData(",Wing,W-1,LH,1,split,,,", "line 2, system name", "nothing")]
    [InlineData("Body,Wing,W-1,LH,1,split,,", "line 2, columns", "8")]
    [InlineData("Body,\"Wing,W-1,LH,1,split,,,", "line 2, quotes", "same line")]
    [Truth(Grade.Property, "a refusal names line, field and value")]
    public void A_bad_part_is_refused_by_line_and_field(string row, string where, string word)
    {
        var sentence = VehicleFile.Read(Vehicle, PartsHead + row + "\n", SamplesHead).Refusal!.Sentence;
        Assert.StartsWith(where, sentence);
        Assert.Contains(word, sentence);
    }

    [Fact]
    [Truth(Grade.Property, "a refusal names line, field and value")]
    public void Doubles_strangers_and_half_loans_are_refused()
    {
        string Parts(string more) => VehicleFile.Read(Vehicle, PartsHead + Wing + more, SamplesHead).Refusal!.Sentence;
        string Samples(string row) => VehicleFile.Read(Vehicle, PartsHead + Wing, SamplesHead + row).Refusal!.Sentence;
        Assert.Contains("already", Parts(Wing));
        Assert.StartsWith("line 2, part", Samples("Door,LH,old,taken off,,,,,"));
        Assert.Contains("lender", Samples("Wing,LH,old,borrowed,,,,,"));
        Assert.Contains("before the day", Samples("Wing,LH,old,borrowed,Aunt,2031-05-04,2031-05-03,,"));
        Assert.StartsWith("line 2, wanted", Samples("Wing,LH,old,taken off,,,,diameter H1,"));
        Assert.StartsWith("line 2, origin", Samples("Wing,LH,old,stolen,,,,,"));
        Assert.Contains("column", VehicleFile.Read("name,maker\nvan,me\n", PartsHead, SamplesHead).Refusal!.Sentence);
        Assert.Contains("one vehicle", VehicleFile.Read(Vehicle + "car,Invented,Two,,\n", PartsHead, SamplesHead).Refusal!.Sentence);
        Assert.False(VehicleFile.Read("", "", "").Ok);
    }

    [Fact]
    [Truth(Grade.Property, "whatever is typed, it is read or refused; no other exception")]
    public void Any_text_is_read_or_refused() =>
        Gen.Select(Gen.String[Gen.Char["abLH,\"\n#|;0129-\u00e9 \r"], 0, 80], Gen.Int[0, 2]).Sample((text, which) =>
            VehicleFile.Read(which == 0 ? text : Vehicle, which == 1 ? PartsHead + text : PartsHead + Wing, which == 2 ? SamplesHead + text : SamplesHead), iter: 3000);
}
