using WitnessMark.Cli.Planning;
using WitnessMark.Maths;
using WitnessMark.OuterRoom;
using WitnessMark.PlanningOffice.Order;
using WitnessMark.PlanningOffice.Tests.Order;

namespace WitnessMark.Bench;

/// <summary>
/// Mean gap to the best known makespan at equal seconds: CP-SAT alone on two threads, our own search alone, and both as
/// the command runs them. Without the library of instances, projects made by chance against the bound proved in 20 s.
/// </summary>
static class OrderBench
{
    readonly record struct Case(string Set, Project Project, int Best);

    public static void Run(double seconds, int every)
    {
        Console.WriteLine("set,instances,seconds,cp_sat_percent,own_percent,portfolio_percent");
        foreach (var set in Cases(every).GroupBy(c => c.Set))
        {
            var gaps = set.Select(c => (Alone: Gap(c, Alone(c.Project, seconds)), Own: Gap(c, Both(c.Project, seconds, null)), Both: Gap(c, Both(c.Project, seconds, new CpSatFinish())))).ToList();
            Console.WriteLine($"{set.Key},{gaps.Count},{seconds},{gaps.Average(g => g.Alone):0.000},{gaps.Average(g => g.Own):0.000},{gaps.Average(g => g.Both):0.000}");
        }
    }

    static double Gap(Case c, Schedule s) => s.Wrong(c.Project) is { } wrong ? throw new RefusedException(wrong) : 100.0 * (s.Makespan(c.Project) - c.Best) / c.Best;

    static Schedule Alone(Project project, double seconds)
    {
        var rough = OrderOfWork.Find(project, new OrderWish(), new Chance(1), () => true);
        return new CpSatFinish().Run(project, rough.Schedule, Bounds.CriticalPath(project), TimeSpan.FromSeconds(seconds), 2, _ => { }, CancellationToken.None)!.Best;
    }

    static Schedule Both(Project project, double seconds, IExactFinish? exact)
    {
        var clock = TimeProvider.System;
        using var portfolio = new Portfolio(project, clock, clock.GetTimestamp() + (long)(seconds * clock.TimestampFrequency), exact);
        return portfolio.Run(new Chance(1)).Schedule;
    }

    static IEnumerable<Case> Cases(int every)
    {
        if (Library() is not { } folder)
            return Enumerable.Range(1, 6).Select(n => Made.Project((ulong)n, 30, 4)).Select(p => new Case("made", p, Proved(p)));
        return File.ReadLines(Path.Combine(folder, "best_known.csv")).Skip(1).Where((_, at) => at % every == 0).Select(line => line.Split(','))
            .Select(f => new Case(f[0], Psplib.Read(File.ReadAllText(Path.Combine(folder, f[3]))).Value, int.Parse(f[4])));
    }

    static int Proved(Project project)
    {
        var rough = OrderOfWork.Find(project, new OrderWish(), new Chance(1), () => true);
        return new CpSatFinish().Run(project, rough.Schedule, rough.Bound, TimeSpan.FromSeconds(20), 2, _ => { }, CancellationToken.None)!.Bound;
    }

    static string? Library()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (Path.Combine(at.FullName, "shared", "data", "psplib") is var path && File.Exists(Path.Combine(path, "best_known.csv"))) return path;
        return null;
    }
}
