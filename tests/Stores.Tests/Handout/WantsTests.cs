using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Handout;

public sealed class WantsTests
{
    static readonly VehicleFile Van = Demo.Read();
    static readonly WantsChoice Plain = new(new DateOnly(2026, 11, 25));

    [Fact]
    [Truth(Grade.Property, "counted by hand in demo/parts.csv: three rows to buy new, three to buy second-hand; no undecided part is missing")]
    public void What_is_to_be_bought_is_wanted()
    {
        var wants = Wants.Of(Van.Vehicle, Van.Parts, Plain).Wants;
        Assert.Equal(3, wants.Count(w => w.As == WantedAs.New));
        Assert.Equal(3, wants.Count(w => w.As == WantedAs.SecondHand));
        Assert.Equal(6, wants.Length);
    }

    [Fact]
    [Truth(Grade.Property, "an undecided part is wanted when it is missing, and only as many as are missing")]
    public void What_is_missing_and_undecided_is_wanted()
    {
        var part = Part("Bonnet catch") with { Quantity = 4 };
        Want? One(Part p, int? missing) => Wants.Of(Van.Vehicle, [p],
            Plain with { Missing = missing is { } n ? ImmutableDictionary<Guid, int>.Empty.Add(p.Id, n) : Plain.Missing }).Wants.SingleOrDefault();
        Assert.Null(One(part, null));
        Assert.Equal((1, WantedAs.Any), (One(part, 1)!.Quantity, One(part, 1)!.As));
        Assert.Equal(4, One(part with { Condition = "Missing, all" }, null)!.Quantity);
        Assert.Null(One(part with { Condition = "One missing" }, null));
        Assert.Null(One(part with { Route = new(Route.Remake, "easy", Plain.On) }, 1));
        Assert.Equal("missing of Bonnet catch: \"5\" is not accepted; give 1 to 4.", Assert.Throws<RefusedException>(() => One(part, 5)).Message);
        Assert.Throws<RefusedException>(() => One(part, 0));
    }

    [Fact]
    [Truth(Grade.Property, "nothing private of the demonstration stands in either form")]
    public void Nothing_private_leaks()
    {
        var list = Wants.Of(Van.Vehicle, Van.Parts, Plain);
        string[] forms = [WantsHtml.Write(list), WantsCsv.Write(list)];
        string[] hidden =
        [
            Van.Vehicle.Name, .. Sentences(Van.Vehicle.Notes), .. Van.Parts.Select(p => p.Condition), .. Van.Parts.Select(p => p.Route?.Reason ?? ""),
            .. Van.Samples.SelectMany(s => new[] { s.Title, s.Loan?.Lender ?? "", $"{s.Loan?.Lent:yyyy-MM-dd}", $"{s.Loan?.Due:yyyy-MM-dd}" }),
            .. Van.Samples.SelectMany(s => s.Wanted.Select(w => w.Why)),
            .. Van.Parts.Select(p => $"{p.Route?.On:yyyy-MM-dd}"), .. Van.Parts.Select(p => p.Id.ToString()), .. Van.Sheets.Values,
        ];
        string[] told = [.. hidden.Where(h => h.Length > 0).Distinct()];
        Assert.True(told.Length > 100);
        foreach (var form in forms)
            Assert.All(told, h => Assert.DoesNotContain(h, form, StringComparison.OrdinalIgnoreCase));
        // Ticked, the conditions of the wanted parts stand there: the check above can fail.
        Assert.Contains("Scored", WantsCsv.Write(Wants.Of(Van.Vehicle, Van.Parts, Plain with { Conditions = true })));
    }

    [Theory]
    [InlineData("=1+1", "\"'=1+1\"")]
    [InlineData("+44", "\"'+44\"")]
    [InlineData("-1", "\"'-1\"")]
    [InlineData("@SUM(A1)", "\"'@SUM(A1)\"")]
    [InlineData("\t=1", "\"'=1\"")]
    [InlineData("\r\n=1", "\"'=1\"")]
    [InlineData("＝1", "\"'＝1\"")]
    [InlineData("3/8\" bolt, =1", "\"3/8\"\" bolt, =1\"")]
    [Truth(Grade.Published, "OWASP Application Security Verification Standard, 1.2.10: = + - @ and tab first in a cell are escaped by a single quote; RFC 4180, 2.7: a quote inside quotes is doubled")]
    public void No_cell_runs_as_a_formula(string name, string cell) =>
        Assert.StartsWith(cell + ",", WantsCsv.Write(Listed(name)).Split("\r\n")[1]);

    [Fact]
    [Truth(Grade.Published, "RFC 4180, section 2: every record ends with CRLF and has as many cells as the head")]
    public void The_table_keeps_to_the_standard()
    {
        var table = WantsCsv.Write(Listed("a\nb"));
        Assert.Equal(2, table.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.DoesNotContain('\n', table.Replace("\r\n", ""));
        Assert.All(table.Split("\r\n", StringSplitOptions.RemoveEmptyEntries), row => Assert.Equal(7, row.Split("\",\"").Length));
    }

    [Fact]
    [Truth(Grade.Property, "the page holds no address of another machine and no typed text as marks")]
    public void The_page_stands_alone()
    {
        var page = WantsHtml.Write(Listed("<script>alert(1)</script> & \"x\"", "2 × ⌀7.94 mm"));
        Assert.DoesNotContain("<script", page);
        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;x&quot;", page);
        Assert.DoesNotContain("http:", page);
        Assert.DoesNotContain("https:", page);
        Assert.DoesNotContain("src=", page.Replace("default-src", ""));
        Assert.Contains("Made to: 2 × ⌀7.94 mm", System.Net.WebUtility.HtmlDecode(page));
        Assert.Contains("photograph", page);
    }

    [Fact]
    [Truth(Grade.Property, "a contact longer than is kept is refused in words")]
    public void A_contact_too_long_is_refused() =>
        Assert.StartsWith("contact:", Assert.Throws<RefusedException>(() => Wants.Of(Van.Vehicle, [], Plain with { Contact = new('x', 3000) })).Message);

    static WantsList Listed(string name, string madeTo = "")
    {
        var part = Part(name) with { Route = new(Route.BuyNew, "why", Plain.On) };
        return Wants.Of(Van.Vehicle, [part], Plain with { MadeTo = ImmutableDictionary<Guid, string>.Empty.Add(part.Id, madeTo) });
    }

    static string[] Sentences(string text) => text.Split(". ", StringSplitOptions.RemoveEmptyEntries);

    static Part Part(string name) => new(NamedId.Of(NamedId.Vehicles, name), Guid.Empty, name, "", Hand.None, 1, "", null);
}
