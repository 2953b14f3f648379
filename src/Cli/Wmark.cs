using System.CommandLine;
using WitnessMark.Cli.Demo;
using WitnessMark.Cli.Drawing;
using WitnessMark.Cli.Intent;
using WitnessMark.Cli.LookUp;
using WitnessMark.Cli.MakeTo;
using WitnessMark.Cli.Photo;
using WitnessMark.Cli.Planning;
using WitnessMark.Cli.Practice;
using WitnessMark.Cli.Shapes;
using WitnessMark.Cli.Stores;
using WitnessMark.Cli.Stores.Pictures;
using WitnessMark.Cli.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Cli;

/// <summary>The command line. Exit codes: 0 done, 1 a fault of the program, 2 bad input with one sentence on the error stream.</summary>
static class Wmark
{
    public const int Fault = 1;
    public const int BadInput = 2;

    public static RootCommand Commands(Desk desk) => new("Witness Mark: from readings of a worn part to a drawing, a blank and a job.")
    {
        new Command("survey", "Readings of a sample and the true plan they make.")
        {
            Survey.SolveCommand.Build(desk),
            NextCommand.Build(desk),
            Survey.SheetCommand.Build(desk),
            TakingCommand.Build(desk),
            SolidCommand.Build(desk),
        },
        new Command("photo", "A photograph of a flat part made true to scale.")
        {
            TargetCommand.Build(desk),
            Photo.SolveCommand.Build(desk),
        },
        MadeToCommand.Build(desk),
        IntentCommand.Build(desk),
        DrawCommand.Build(desk),
        BlankCommand.Build(desk),
        TestBendCommand.Build(desk),
        RailCommand.Build(desk),
        TransitionCommand.Build(desk),
        SplitCommand.Build(desk),
        SettingCommand.Build(desk),
        BeadCommand.Build(desk),
        SpringBackCommand.Build(desk),
        SectionCommand.Build(desk),
        JobCommand.Build(desk),
        ForecastCommand.Build(desk),
        PlanCommand.Build(desk),
        NextJobCommand.Build(desk),
        OrderCommand.Build(desk),
        RefitCommand.Build(desk),
        TagsCommand.Build(desk),
        new Command("parts", "The parts of a vehicle.")
        {
            ImportCommand.Build(desk),
            FindCommand.Build(desk),
        },
        PictureCommand.Build(desk),
        LoanCommand.Build(desk),
        WantsCommand.Build(desk),
        UnitsCommand.Build(desk),
        ThreadCommand.Build(desk),
        SizeCommands.Gauge(desk),
        SizeCommands.Drill(desk),
        new Command("practice", "A printed sheet to measure, and how well it was measured.")
        {
            Practice.SheetCommand.Build(desk),
            CompareCommand.Build(desk),
        },
        new Command("demo", "The demonstration vehicle.")
        {
            LoadCommand.Build(desk),
        },
    };

    public static int Run(string[] args, Desk desk)
    {
        var parsed = Commands(desk).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors is [var first, ..]) return Refuse(desk, Plain(first.Message));
        try
        {
            return parsed.Invoke(new InvocationConfiguration { Output = desk.Out, Error = desk.Error, EnableDefaultExceptionHandler = false });
        }
        catch (RefusedException e)
        {
            return Refuse(desk, e.Message);
        }
        catch (Exception e)
        {
            // Told whole, so that it can be mended; nothing half-written is left, since files are moved into place.
            desk.Error.WriteLine($"This is a fault of the program and not of the input. {e}");
            return Fault;
        }
    }

    /// <summary>A type of the program tells the person nothing.</summary>
    static string Plain(string message) => message.Split(" as expected type ") is [var what, var type]
        ? $"{what}; give {(type.Contains("Int", StringComparison.Ordinal) ? "a whole number within its range" : "one of the values that --help lists")}." : message;

    static int Refuse(Desk desk, string sentence)
    {
        // What stands in a file may hold signs that would upset a terminal.
        desk.Error.WriteLine(string.Concat(sentence.ReplaceLineEndings(" ").Select(c => char.IsControl(c) ? '\uFFFD' : c)));
        return BadInput;
    }
}
