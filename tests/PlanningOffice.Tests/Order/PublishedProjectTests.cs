using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Order;

public class PublishedProjectTests
{
    static readonly int[] Durations = [0, 3, 2, 5, 4, 2, 3, 4, 2, 4, 6, 0];

    static readonly int[][] Needs = [[0, 0], [5, 1], [0, 4], [1, 4], [1, 3], [3, 2], [3, 1], [2, 4], [4, 0], [5, 2], [2, 5], [0, 0]];

    static readonly int[][] Successors = [[1, 2, 3], [4, 5], [9, 10], [8], [6, 7], [9, 10], [8, 9], [8], [11], [11], [11], []];

    [Fact, Truth(Grade.Published, "Python-MIP documentation, Modeling Examples, Resource Constrained Project Scheduling: ten jobs, two resources of 6 and 8; its example program asserts the least makespan, 21")]
    public void Ten_jobs_on_two_resources_take_21()
    {
        var project = Project.Of([.. Durations.Select((d, i) => new Activity(d, [.. Needs[i]], [.. Successors[i]]))], [6, 8]).Value;
        var found = OrderOfWork.Find(project, new OrderWish(), new Chance(1), Made.After(2000));
        Assert.Null(found.Schedule.Wrong(project));
        Assert.Equal(21, found.Makespan);
        Assert.InRange(found.Bound, Bounds.CriticalPath(project), 21);
    }
}
