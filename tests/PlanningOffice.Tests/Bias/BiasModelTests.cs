using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests;

public sealed class BiasModelTests
{
    [Fact]
    [Truth(Grade.Property, "many jobs that all took twice their guess give a factor near 2; none give the prior")]
    public void Many_jobs_outweigh_the_prior()
    {
        var model = new BiasModel([.. Enumerable.Repeat(new FinishedJob("FitUp", "Brakes", 3, 6), 40)]);
        Assert.InRange(model.Of("FitUp", "Brakes").Median, 1.9, 2.1);
        Assert.Equal(1.5, new BiasModel([]).Of("FitUp", "Brakes").Median, 9);
    }

    [Fact]
    [Truth(Grade.Property, "hours of a finished job are above 0")]
    public void No_hours_are_refused() =>
        Assert.Contains("guessed hours", Assert.Throws<RefusedException>(() => new BiasModel([new("FitUp", "Brakes", 0, 1)])).Message);
}
