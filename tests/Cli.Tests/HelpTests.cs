using System.CommandLine;
using WitnessMark.Cli;

namespace WitnessMark.Tests.Cli;

public class HelpTests
{
    public static TheoryData<string> Leaves => [.. Names(Wmark.Commands(new Desk(TextWriter.Null, TextWriter.Null, TimeProvider.System)), "")];

    [Theory]
    [MemberData(nameof(Leaves))]
    public void Every_command_shows_an_example(string command)
    {
        var told = Told.By([.. command.Split(' '), "--help"]);
        Assert.Equal((0, ""), (told.Code, told.Error));
        Assert.Contains($"  wmark {command}", told.Out);
    }

    [Theory]
    [MemberData(nameof(Leaves))]
    public void Every_command_stands_in_the_guide(string command) =>
        Assert.Contains($"`wmark {command} ", File.ReadAllText("guide/command-line.md"));

    [Theory]
    [InlineData("no-such-command")]
    [InlineData("units")]
    [InlineData("units 5 --no-such-option")]
    [InlineData("survey solve")]
    public void A_command_not_understood_is_one_sentence_and_exit_code_two(string command)
    {
        var told = Told.By(command.Split(' '));
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Single(told.Error.TrimEnd('\n').Split('\n'));
        Assert.NotEmpty(told.Error.Trim());
    }

    static IEnumerable<string> Names(Command command, string above) => command.Subcommands.Count == 0
        ? [above]
        : command.Subcommands.SelectMany(c => Names(c, $"{above} {c.Name}".Trim()));
}
