using System.Text.RegularExpressions;

namespace WitnessMark.Tests.Architecture;

/// <summary>The outside authorities that tests lean on are named well enough to be found again.</summary>
public partial class TruthTests
{
    [Fact]
    public void Every_truth_names_its_source()
    {
        var vague =
            from file in House.Files("tests", ".cs")
            from Match truth in Attribute().Matches(House.Read(file))
            let source = truth.Groups[2].Value
            where source.Trim().Length < 8
            select $"{file}: {truth.Value}";
        Assert.Empty(vague);
    }

    [Theory]
    [InlineData("Maths")]
    [InlineData("Trade")]
    [InlineData("DrawingOffice")]
    [InlineData("PlanningOffice")]
    [InlineData("PrintRoom")]
    public void Every_room_that_computes_is_held_to_an_outside_truth(string room) =>
        Assert.Contains(House.Files($"tests/{room}.Tests", ".cs"), f => Attribute().IsMatch(House.Read(f)));

    [Fact]
    public void Every_folder_of_truth_data_says_where_it_comes_from()
    {
        var folders = Directory.EnumerateDirectories(Path.Combine(House.Root, "tests"), "truth", SearchOption.AllDirectories)
            .Where(d => !d.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}"))
            .SelectMany(d => Directory.EnumerateFiles(d, "README.md").Any() ? [] : Directory.GetDirectories(d));
        Assert.DoesNotContain(folders, d => !File.Exists(Path.Combine(d, "README.md")));
    }

    [GeneratedRegex("""\bTruth\(\s*Grade\.(\w+),\s*"([^"]*)"\s*\)""")]
    private static partial Regex Attribute();
}
