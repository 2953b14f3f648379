using System.CommandLine;
using System.Globalization;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;

namespace WitnessMark.Cli;

/// <summary>Options and arguments that several commands share, and how a command is put together.</summary>
static class Common
{
    public static Option<bool> Json() => new("--json") { Description = "Print one JSON object instead of words." };

    public static Argument<string> File(string what) => new("FILE") { Description = what };

    public static Option<string?> Out(string what) => new("--out", "-o") { Description = what, HelpName = "FILE" };

    public static Option<string> Folder() => new("--out", "-o") { Description = "Folder for the files.", HelpName = "FOLDER", DefaultValueFactory = _ => "." };

    /// <summary>A number with a point; a comma is refused, since it would be passed over as a sign for thousands.</summary>
    public static Option<double> Number(string name, string does) => new(name)
    {
        Description = does,
        CustomParser = r =>
        {
            if (double.TryParse(r.Tokens[0].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)) return number;
            r.AddError(Refusal.Of(name, r.Tokens[0].Value, "give a number, with a point for the fraction").Sentence);
            return 0;
        },
    };

    /// <summary>Writes files into a folder and returns their full paths.</summary>
    public static List<string> WriteAll(string folder, IEnumerable<PrintOut> files) =>
        [.. files.Select(f => Desk.Write(Path.Combine(folder, f.FileName), f.Bytes))];

    /// <summary>A command whose help ends with an example.</summary>
    public static Command Command(string name, string does, string example, Symbol[] symbols, Action<ParseResult> run)
    {
        var command = Command(name, does, example, symbols);
        command.SetAction(parsed =>
        {
            run(parsed);
            return 0;
        });
        return command;
    }

    /// <summary>The same for a command that keeps or fetches records.</summary>
    public static Command Command(string name, string does, string example, Symbol[] symbols, Func<ParseResult, CancellationToken, Task> run)
    {
        var command = Command(name, does, example, symbols);
        command.SetAction(async (parsed, stop) =>
        {
            await run(parsed, stop);
            return 0;
        });
        return command;
    }

    static Command Command(string name, string does, string example, Symbol[] symbols)
    {
        var command = new Command(name, $"{does}\n\nExample:\n  {example}");
        foreach (var symbol in symbols)
        {
            if (symbol is Argument argument) command.Add(argument);
            else command.Add((Option)symbol);
        }
        return command;
    }
}
