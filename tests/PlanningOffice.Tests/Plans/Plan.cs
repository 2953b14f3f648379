namespace WitnessMark.PlanningOffice.Tests.Plans;

/// <summary>Small plans for the tests.</summary>
static class Plan
{
    public static Guid Id(int n) => new(n, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);

    public static Job Job(int n, double hours, params int[] after) =>
        PlanningOffice.Job.Plain(Id(n), Guid.Empty, null, null, $"job {n}", WorkKind.Other, new(hours, hours, hours), Cost.None("GBP")) with { After = [.. after.Select(Id)] };

    public static Lead Supply(double low, double likely, double high, DateOnly? ordered = null) =>
        new("the linings", LeadSide.Before, new(low, likely, high), Cost.Of(new(20, 30, 40), "GBP"), 0.5, ordered, false);
}
