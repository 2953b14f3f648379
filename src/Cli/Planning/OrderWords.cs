using System.Globalization;
using WitnessMark.PlanningOffice.Order;

namespace WitnessMark.Cli.Planning;

/// <summary>An order of work in words and figures.</summary>
static class OrderWords
{
    public static object Json(Project project, OrderAnswer answer) => new
    {
        Makespan = answer.Schedule.Makespan(project),
        Starts = answer.Schedule.Starts.Select((start, i) => (Job: Number(i), start)).ToDictionary(s => s.Job, s => s.start),
    };

    public static void Write(TextWriter to, Project project, OrderAnswer answer)
    {
        var makespan = answer.Schedule.Makespan(project);
        to.WriteLine(makespan <= answer.Bound
            ? $"makespan {makespan}: none can be shorter"
            : $"makespan {makespan}; none can be under {answer.Bound}");
        if (answer.Caution is { } caution) to.WriteLine($"! {caution}");
        to.WriteLine("  start    end    job");
        foreach (var i in Enumerable.Range(0, project.Activities.Length).OrderBy(i => answer.Schedule.Starts[i]))
            to.WriteLine($"{answer.Schedule.Starts[i],7}{answer.Schedule.Starts[i] + project.Activities[i].Duration,7}{Number(i),7}");
    }

    static string Number(int place) => (place + 1).ToString(CultureInfo.InvariantCulture);
}
