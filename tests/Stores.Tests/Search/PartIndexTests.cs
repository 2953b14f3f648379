using CsCheck;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Search;

public sealed class PartIndexTests
{
    static readonly PartIndex Van = PartIndex.Of(Demo.Read() is var demo
        ? demo.Parts.Select(p => new PartWords(p, demo.Systems.First(s => s.Id == p.SystemId).Name)) : []);

    [Theory]
    [InlineData("front spring lh", "Front spring LH")]
    [InlineData("LEFT spring frnot", "Front spring LH")]
    [InlineData("cilinder stud", "Cylinder head stud")]
    [InlineData("radiater", "Radiator")]
    [InlineData("exaust", "Exhaust manifold")]
    [InlineData("head lamp rh", "Headlamp RH")]
    [InlineData("hinges", "Door hinge")]
    [InlineData("batt", "Battery box")]
    [InlineData("Q12-3401", "Fuel tank")]
    [InlineData("Q123401", "Fuel tank")]
    [InlineData("dynamo", "Dynamo")]
    [InlineData("king pin right", "Kingpin RH")]
    [Truth(Grade.CommonPractice, "what a person looking for the part would expect first")]
    public void The_expected_part_comes_first(string words, string part)
    {
        var first = Van.Find(words)[0].Of.Part;
        Assert.Equal(part, $"{first.Name}{(first.Hand == Hand.None ? "" : $" {first.Hand}")}");
    }

    [Fact]
    [Truth(Grade.Published, "Wikipedia, Lists of common misspellings, for machines (2017): the first 40 words with their corrections")]
    public void Common_misspellings_find_their_word()
    {
        var pairs = Misspelt.Split(';').Select(p => p.Split('>')).ToArray();
        var index = PartIndex.Of(pairs.Select(p => p[1]).Distinct().Select((name, i) => Named(name, i)));
        var lost = pairs.Where(p => index.Find(p[0]).Take(3).All(f => f.Of.Part.Name != p[1])).Select(p => p[0]);
        // Three slips or more in one word are beyond what is forgiven.
        Assert.Equal(["abortificant"], lost);
    }

    [Fact]
    [Truth(Grade.Property, "a size, a fraction or a part number is never bent into another")]
    public void Figures_are_not_forgiven()
    {
        var index = PartIndex.Of([Named("Bolt 3/8", 1), Named("Bolt 5/8", 2), Named("Bolt 13/8", 3), Named("Bolt 3/8 BSF", 4)]);
        Assert.Equal(["Bolt 3/8", "Bolt 3/8 BSF"], index.Find("bolt 3/8").Select(f => f.Of.Part.Name));
        Assert.Empty(index.Find("7/16"));
    }

    [Theory]
    [InlineData("bushes", "Bush")]
    [InlineData("bush", "Bushes")]
    [InlineData("assemblies", "Assembly")]
    [InlineData("shoe", "Shoes")]
    [Truth(Grade.CommonPractice, "English plurals of parts")]
    public void One_or_many_makes_no_difference(string words, string name) =>
        Assert.Equal(name, Assert.Single(PartIndex.Of([Named(name, 1)]).Find(words)).Of.Part.Name);

    [Fact]
    [Truth(Grade.Property, "the snippet marks the word in its text")]
    public void It_says_why()
    {
        var found = PartIndex.Of([new(Named("Carburetter", 1).Part with { Condition = "float leaks" }, "Fuel", "Manifold", "bin 7")]).Find("carburetor floats bin manifold fuel");
        Assert.Equal(
            ["\"carburetor\" read as \"Carburetter\" in the name", "\"floats\" read as \"float\" in the condition", "\"bin\" in the tags and places",
             "\"Manifold\" in the assembly", "\"Fuel\" in the system"],
            Assert.Single(found).Words.Select(w => w.Why));
    }

    [Fact]
    [Truth(Grade.Property, "parts that hold the most of the asked words are kept; order of typing and of the list is of no account")]
    public void Order_makes_no_difference() =>
        Gen.Shuffle(Demo.Read().Parts.ToArray()).Select(Gen.Shuffle(new[] { "front", "sprng", "lh", "zzzz" })).Sample((parts, words) =>
            Assert.Equal(Van.Find("front sprng lh zzzz").Select(f => f.Of.Part.Id).First(),
                PartIndex.Of(parts.Select(p => new PartWords(p, ""))).Find(string.Join(' ', words)).Select(f => f.Of.Part.Id).First()), iter: 50);

    [Fact]
    [Truth(Grade.Property, "whatever is typed, there is an answer; nothing readable finds nothing")]
    public void Any_text_is_answered()
    {
        Assert.Empty(Van.Find(""));
        Assert.Empty(Van.Find(" --- \" "));
        Assert.Empty(PartIndex.Of([]).Find("spring"));
        Gen.String.Sample(text => Assert.All(Van.Find(text), f => Assert.InRange(f.Score, 0.01, 1.06)), iter: 1000);
    }

    const string Misspelt =
        "abandonned>abandoned;abbout>about;aberation>aberration;abilityes>abilities;abilties>abilities;abilty>ability;abondon>abandon;abondoned>abandoned;"
        + "abondoning>abandoning;abondons>abandons;aborigene>aborigine;abortificant>abortifacient;abotu>about;abreviate>abbreviate;abreviated>abbreviated;"
        + "abreviation>abbreviation;abritrary>arbitrary;absail>abseil;absailing>abseiling;abscence>absence;absense>absence;absolutly>absolutely;"
        + "absorbsion>absorption;absorbtion>absorption;abudance>abundance;abundacies>abundances;abundancies>abundances;abundunt>abundant;abutts>abuts;"
        + "acadamy>academy;acadmic>academic;accademic>academic;accademy>academy;acccess>access;acccused>accused;accelleration>acceleration;"
        + "acceptence>acceptance;acceptible>acceptable;accesories>accessories;accessable>accessible";

    static PartWords Named(string name, int id) =>
        new(new Part(NamedId.Of(NamedId.Vehicles, $"{id}"), Guid.Empty, name, "", Hand.None, 1, "", null), "");
}
