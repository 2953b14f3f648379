using WitnessMark.Tests;
using WitnessMark.Web.Client.PlanningOffice.OrderOfWork;

namespace WitnessMark.Web.Tests.Charts;

public sealed class OrderMovesTests
{
    static readonly Guid[] s_jobs = [.. Enumerable.Range(0, 6).Select(_ => Guid.NewGuid())];

    [Theory]
    [InlineData("012345", "012345", "")]
    [InlineData("012345", "120345", "0")]
    [InlineData("012345", "543210", "54321")]
    [InlineData("012345", "0145", "")]
    [InlineData("01", "5014", "")]
    [InlineData("", "012", "")]
    [Truth(Grade.Property, "the fewest to take out so that the rest keep their order: total less the longest rising run, told by hand")]
    public void Only_the_fewest_jobs_count_as_moved(string before, string now, string moved) =>
        Assert.Equal(moved.Length, OrderMoves.Of(Of(before), Of(now)).Length);

    static System.Collections.Immutable.ImmutableArray<Guid> Of(string places) => [.. places.Select(c => s_jobs[c - '0'])];
}
