using System.CommandLine;
using System.Diagnostics;
using System.Text;
using WitnessMark.Maths;
using WitnessMark.OuterRoom;
using WitnessMark.PlanningOffice.Order;

namespace WitnessMark.Cli.Planning;

/// <summary><c>wmark order</c></summary>
static class OrderCommand
{
    public static Command Build(Desk desk)
    {
        var file = Common.File("A single-mode project in PSPLIB's .sm form.");
        var seconds = Common.Number("--seconds", "How long the search may take, the start of the program counted.");
        seconds.DefaultValueFactory = _ => 5;
        var seed = new Option<ulong>("--seed") { Description = "Chance of our own search.", DefaultValueFactory = _ => 1 };
        var own = new Option<bool>("--own") { Description = "Only our own search, without the exact finish." };
        var json = Common.Json();
        return Common.Command("order", "The order of work: starts that respect precedence and shared resources, the whole as short as can be found.", "wmark order project.sm --seconds 5 --json", [file, seconds, seed, own, json], parsed =>
        {
            var limit = parsed.GetValue(seconds);
            if (!(limit is > 0 and <= 86_400)) throw new RefusedException(Refusal.Of("--seconds", $"{limit}", "it must be above 0 and at most 86400"));
            var deadline = desk.Clock.GetTimestamp() + (long)(Math.Max(0, limit - SinceStart(desk.Clock)) * desk.Clock.TimestampFrequency);
            var project = Psplib.Read(Encoding.UTF8.GetString(Desk.Read(parsed.GetRequiredValue(file)))).Value;
            var portfolio = new Portfolio(project, desk.Clock, deadline, parsed.GetValue(own) ? null : new CpSatFinish());
            var answer = portfolio.Run(new Chance(parsed.GetValue(seed)));
            if (answer.Schedule.Wrong(project) is { } wrong) throw new InvalidOperationException(wrong.Sentence);
            if (parsed.GetValue(json)) desk.WriteJson(OrderWords.Json(project, answer));
            else OrderWords.Write(desk.Out, project, answer);
        });
    }

    /// <summary>Seconds that the program has already run. A clock of a test tells nothing about it, and a process that serves many commands counts none.</summary>
    static double SinceStart(TimeProvider clock)
    {
        if (clock != TimeProvider.System) return 0;
        var since = (clock.GetUtcNow().UtcDateTime - Process.GetCurrentProcess().StartTime.ToUniversalTime()).TotalSeconds;
        return since is > 0 and < LongestStart ? since : 0;
    }

    /// <summary>Seconds; a start longer than this is not one.</summary>
    const double LongestStart = 5;
}
