using System.Xml.Linq;
using NetArchTest.Rules;

namespace WitnessMark.Tests.Architecture;

/// <summary>Arrows point one way: by project file, by what the built assembly refers to, and by type.</summary>
public class ArrowTests
{
    public static TheoryData<string> Rooms => [.. House.Arrows.Keys.Where(r => r is not ("Web" or "Web.Client"))];

    [Fact]
    public void Every_room_under_src_has_its_arrows_stated()
    {
        var rooms = Directory.GetDirectories(Path.Combine(House.Root, "src")).Select(d => Path.GetFileName(d)!);
        Assert.Empty(rooms.Except(House.Arrows.Keys));
    }

    [Fact]
    public void Project_files_refer_only_along_the_arrows()
    {
        var wrong =
            from file in House.Files("src", ".csproj")
            let room = Path.GetFileNameWithoutExtension(file)
            from reference in XDocument.Parse(House.Read(file)).Descendants("ProjectReference")
            let target = Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value)
            where !House.Arrows[room].Contains(target)
            select $"{room} -> {target}";
        Assert.Empty(wrong);
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void Built_assemblies_refer_only_along_the_arrows(string room)
    {
        var used = House.Assembly(room).GetReferencedAssemblies()
            .Select(a => a.Name!)
            .Where(n => n.StartsWith("WitnessMark.", StringComparison.Ordinal))
            .Select(n => n["WitnessMark.".Length..]);
        Assert.Empty(used.Except(House.Arrows[room]));
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void No_type_leans_on_a_room_it_may_not_use(string room)
    {
        var forbidden = House.Arrows.Keys.Except(House.Arrows[room]).Where(r => r != room).Select(r => $"WitnessMark.{r}").ToArray();
        var result = Types.InAssembly(House.Assembly(room)).ShouldNot().HaveDependencyOnAny(forbidden).GetResult();
        Assert.True(result.IsSuccessful, $"{room}: {string.Join(", ", result.FailingTypeNames ?? [])}");
    }

    [Fact]
    public void A_planted_arrow_is_found() =>
        Assert.False(Types.InAssembly(typeof(Planted).Assembly).That().HaveName(nameof(Planted))
            .ShouldNot().HaveDependencyOnAny("WitnessMark.Maths").GetResult().IsSuccessful);

    sealed record Planted(Maths.Vec2 At);
}
