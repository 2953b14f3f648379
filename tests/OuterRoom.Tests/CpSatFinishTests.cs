using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order;
using WitnessMark.PlanningOffice.Tests.Order;
using WitnessMark.Tests;

namespace WitnessMark.OuterRoom.Tests;

public class CpSatFinishTests
{
    [Fact, Truth(Grade.SecondImplementation, "Google.OrTools 9.15 CP-SAT, proved optima of projects made by chance")]
    public void Our_own_search_finds_what_the_exact_finish_proves()
    {
        for (var seed = 1UL; seed <= 8; seed++)
        {
            var project = Made.Project(seed);
            var own = OrderOfWork.Find(project, new OrderWish(), new Chance(seed), Made.After(1500));
            var rough = OrderOfWork.Find(project, new OrderWish(), new Chance(seed), () => true);
            var exact = new CpSatFinish().Run(project, rough.Schedule, rough.Bound, TimeSpan.FromSeconds(20), 1, _ => { }, CancellationToken.None);
            Assert.NotNull(exact);
            Assert.Null(exact.Best.Wrong(project));
            Assert.Equal(exact.Bound, exact.Best.Makespan(project));
            Assert.Equal(exact.Bound, own.Makespan);
            Assert.True(own.Bound <= exact.Bound);
        }
    }
}
