using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Plans;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Plans;

public sealed class CriticalPathTests
{
    /// <summary>Weeks of the tasks T01 to T18, and which waits for which.</summary>
    static readonly double[] Weeks = [2, 16, 9, 8, 10, 6, 2, 2, 9, 5, 3, 2, 1, 7, 4, 3, 9, 1];
    static readonly (int First, int Then)[] Arcs =
    [
        (1, 2), (2, 3), (2, 4), (2, 14), (3, 5), (4, 7), (4, 10), (4, 9), (4, 6), (4, 15), (5, 6), (6, 9), (6, 11), (6, 8),
        (7, 13), (8, 16), (9, 12), (11, 16), (12, 17), (14, 16), (14, 15), (17, 18),
    ];

    /// <summary>Task, earliest start, latest start, slack.</summary>
    static readonly (int Task, double Early, double Late, double Slack)[] Answers =
    [
        (1, 0, 0, 0), (2, 2, 2, 0), (3, 18, 18, 0), (5, 27, 27, 0), (6, 37, 37, 0), (9, 43, 43, 0), (12, 52, 52, 0), (17, 54, 54, 0), (18, 63, 63, 0),
        (4, 18, 29, 11), (7, 26, 61, 35), (10, 26, 59, 33), (14, 18, 53, 35), (15, 26, 60, 34), (13, 28, 63, 35), (8, 43, 59, 16), (11, 43, 58, 15), (16, 46, 61, 15),
    ];

    [Fact]
    [Truth(Grade.Published, "Guéret, Prins, Sevaux, Applications of Optimization with Xpress-MP, 2000, 7.1 stadium construction: 64 weeks; floats as solved by linear programming in J. Kantor's course CBE 40455, notebook 04.01")]
    public void The_stadium_takes_64_weeks_and_each_task_has_its_float()
    {
        var jobs = Enumerable.Range(1, 18).Select(t => Plan.Job(t, Weeks[t - 1], [.. Arcs.Where(a => a.Then == t).Select(a => a.First)])).Reverse().ToList();
        var path = CriticalPath.Of(jobs, j => j.Hours.Likely).ToDictionary(p => p.Job);
        Assert.Equal(64, path.Values.Max(p => p.EarliestFinish));
        foreach (var (task, early, late, slack) in Answers)
        {
            var p = path[Plan.Id(task)];
            Assert.Equal((early, late, slack, slack == 0), (p.EarliestStart, p.LatestStart, p.Float, p.Critical));
        }
    }

    [Fact]
    [Truth(Grade.Published, "worked example of a project-network handout, studylib.net/doc/8378728: A-B-D-E-G is critical, 16 hours; C and F have one hour of slack")]
    public void The_handout_example_takes_16_hours()
    {
        Job[] jobs = [Plan.Job(1, 6), Plan.Job(2, 2, 1), Plan.Job(3, 2, 1), Plan.Job(4, 3, 2), Plan.Job(5, 4, 4, 6), Plan.Job(6, 2, 3), Plan.Job(7, 1, 5)];
        var path = CriticalPath.Of(jobs, j => j.Hours.Likely).ToDictionary(p => p.Job);
        Assert.Equal([0, 0, 1, 0, 0, 1, 0], jobs.Select(j => path[j.Id].Float));
        Assert.Equal([6, 8, 9, 11, 15, 11, 16], jobs.Select(j => path[j.Id].LatestFinish));
        Assert.Equal(16, path[Plan.Id(7)].EarliestFinish);
    }

    [Fact]
    [Truth(Grade.Property, "a ring has no order; a duration is a number from 0 up; no jobs take no time")]
    public void Impossible_plans_are_refused()
    {
        Assert.Contains("\"job 1\" waits for", Assert.Throws<RefusedException>(() => CriticalPath.Of([Plan.Job(1, 1, 2), Plan.Job(2, 1, 1)], _ => 1)).Message);
        Assert.Throws<RefusedException>(() => CriticalPath.Of([Plan.Job(1, 1)], _ => double.NaN));
        Assert.Throws<RefusedException>(() => CriticalPath.Of([Plan.Job(1, 1), Plan.Job(1, 1)], _ => 1));
        Assert.Empty(CriticalPath.Of([], _ => 1));
    }
}
