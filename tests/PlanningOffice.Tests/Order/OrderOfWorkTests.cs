using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order;
using WitnessMark.PlanningOffice.Order.Search;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Order;

public class OrderOfWorkTests
{
    [Fact, Truth(Grade.Property, "a schedule must respect precedence and capacity; no makespan is under a lower bound")]
    public void Every_order_can_be_worked_and_none_is_under_the_bound()
    {
        for (var seed = 1UL; seed <= 60; seed++)
        {
            var project = Made.Project(seed, 6 + (int)(seed % 30), 1 + (int)(seed % 6));
            var found = OrderOfWork.Find(project, new OrderWish(), new Chance(seed), Made.After(80));
            Assert.Null(found.Schedule.Wrong(project));
            Assert.Equal(found.Makespan, found.Schedule.Makespan(project));
            Assert.True(found.Makespan >= found.Bound);
        }
    }

    [Fact, Truth(Grade.Published, "V. Valls, F. Ballestín, S. Quintanilla, Justification and RCPSP, EJOR 165 (2005) 375-386: never longer")]
    public void Justification_never_lengthens()
    {
        for (var seed = 1UL; seed <= 100; seed++)
        {
            var project = Made.Project(seed, 25, 3);
            var decoder = new Decoder(new Web(project, 0));
            var (starts, list) = (new int[25], new int[25]);
            new Breeding(decoder.Web, new Chance(seed)).Sample(list, 1);
            var before = decoder.Serial(list, starts);
            var after = decoder.Justify(starts, before);
            Assert.True(after <= before);
            Assert.Null(new Schedule([.. starts]).Wrong(project));
        }
    }

    [Fact, Truth(Grade.Property, "the same seed and steps give the same order")]
    public void The_same_seed_gives_the_same_order()
    {
        var project = Made.Project(5, 30, 4);
        var a = OrderOfWork.Find(project, new OrderWish(), new Chance(9), Made.After(300));
        var b = OrderOfWork.Find(project, new OrderWish(), new Chance(9), Made.After(300));
        Assert.Equal(a.Schedule.Starts.AsEnumerable(), b.Schedule.Starts.AsEnumerable());
    }

    [Fact, Truth(Grade.Published, "W. E. Smith, Naval Research Logistics Quarterly 3 (1956) 59-66: on one machine least Σ w·C is by falling w/p")]
    public void One_pair_of_hands_works_by_weight_over_time()
    {
        int[] durations = [5, 3, 8, 2, 6, 4];
        double[] weights = [1, 6, 4, 9, 2, 7];
        var project = Project.Of([.. durations.Select(d => new Activity(d, [1], []))], [1]).Value;
        var found = OrderOfWork.Find(project, new OrderWish { Weights = [.. weights] }, new Chance(1), Made.After(3000));
        var (at, least) = (0, 0.0);
        foreach (var i in Enumerable.Range(0, 6).OrderByDescending(i => weights[i] / durations[i])) least += weights[i] * (at += durations[i]);
        Assert.Equal(least + durations.Sum(), found.Cost, 9);
    }

    [Fact, Truth(Grade.Property, "a schedule found elsewhere is taken up, so the answer is never worse")]
    public void News_from_elsewhere_joins_the_search()
    {
        var project = Made.Project(11, 30, 4);
        var better = OrderOfWork.Find(project, new OrderWish(), new Chance(2), Made.After(3000));
        var once = better.Schedule;
        var found = OrderOfWork.Find(project, new OrderWish(), new Chance(1), Made.After(1), news: () => Interlocked.Exchange(ref once!, null));
        Assert.True(found.Makespan <= better.Makespan);
    }

    [Fact, Truth(Grade.Property, "a job with nothing behind it and room left over moves alone")]
    public void After_a_slip_only_what_must_move_is_moved()
    {
        // Two chains of three on a bench each; the first of one chain slips by two slots.
        ImmutableArray<Activity> Jobs(int first) =>
        [
            new(first, [1], [1]), new(3, [1], [2]), new(4, [1], []),
            new(2, [1], [4]), new(5, [1], [5]), new(3, [1], []),
        ];
        var standing = new Schedule([0, 3, 9, 0, 2, 7]);
        Assert.Null(standing.Wrong(Project.Of(Jobs(3), [2]).Value));
        var slipped = Project.Of(Jobs(5), [2]).Value;
        var found = OrderOfWork.Reorder(slipped, standing, 5, new Chance(1), Made.After(2000));
        Assert.Null(found.Schedule.Wrong(slipped));
        Assert.Equal([1], Enumerable.Range(0, 6).Where(i => found.Schedule.Starts[i] != standing.Starts[i]));
    }
}
