using System.Text.RegularExpressions;

namespace WitnessMark.Tests.Architecture;

/// <summary>Small files in their own room, free of leftovers.</summary>
public partial class FileTests
{
    [Fact]
    public void Files_are_short()
    {
        var lengths = Sources.Select(f => Lines(f).Length).Order().ToArray();
        Assert.True(lengths[lengths.Length / 2] < 120, $"median {lengths[lengths.Length / 2]} lines");
        Assert.True(lengths[lengths.Length * 9 / 10] < 300, $"nine in ten: {lengths[lengths.Length * 9 / 10]} lines");
    }

    [Fact]
    public void A_file_past_500_lines_gives_its_reason_at_the_top() =>
        Assert.DoesNotContain(Sources, f => Lines(f) is { Length: > 500 } l && !l.Take(5).Any(x => x.StartsWith("// Long because ", StringComparison.Ordinal)));

    [Fact]
    public void A_folder_holds_a_dozen_files_at_most() =>
        Assert.Empty(Sources.GroupBy(f => Path.GetDirectoryName(f)!).Where(g => g.Count() > 12).Select(g => $"{g.Key}: {g.Count()}"));

    /// <summary>The room, and the folder or some of the folders above the file.</summary>
    [Fact]
    public void A_namespace_is_the_room_and_its_folder()
    {
        var wrong =
            from file in Sources
            let space = FileScoped().Match(House.Read(file))
            where space.Success
            let folder = Path.GetDirectoryName(file)!.Replace('\\', '/')["src/".Length..].Replace('/', '.')
            where !Holds(space.Groups[1].Value, folder)
            select $"{file}: {space.Groups[1].Value}";
        Assert.Empty(wrong);
    }

    [Fact]
    public void Nothing_is_left_to_do_and_nothing_is_skipped()
    {
        string[] leftovers = ["TO" + "DO", "FIX" + "ME", "NotImplemented" + "Exception", "Skip =" + " \"", "Ski" + "p=\""];
        Assert.Empty(Containing(leftovers, [.. Sources, .. House.Files("tests", ".cs")]));
    }

    [Fact]
    public void No_path_of_one_machine_stands_in_the_house()
    {
        string[] places = ["/wo" + "rk/", "/ho" + "me/", "/ro" + "ot/", "C:" + @"\Users"];
        string[] files =
        [
            .. House.Files("src", ".cs", ".csproj", ".csv", ".json", ".razor", ".css", ".js"), .. House.Files("tests", ".cs", ".csproj", ".md"),
            .. House.Files("docs", ".md"), .. House.Files("demo", ".csv", ".json", ".md"), "README.md", "try", "check",
        ];
        Assert.Empty(Containing(places, files.Where(f => File.Exists(Path.Combine(House.Root, f)))));
    }

    static bool Holds(string space, string folder)
    {
        var room = House.Arrows.Keys.Where(r => folder == r || folder.StartsWith(r + ".", StringComparison.Ordinal)).MaxBy(r => r.Length);
        return room is not null && $"{space}.".StartsWith($"WitnessMark.{room}.", StringComparison.Ordinal) && $"WitnessMark.{folder}.".StartsWith($"{space}.", StringComparison.Ordinal);
    }

    static string[] Sources { get; } = [.. House.Files("src", ".cs")];

    static string[] Lines(string file) => House.Read(file).Split('\n');

    static IEnumerable<string> Containing(string[] words, IEnumerable<string> files) =>
        from file in files
        let text = House.Read(file)
        from word in words
        where text.Contains(word, StringComparison.Ordinal)
        select $"{file}: {word}";

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex FileScoped();
}
