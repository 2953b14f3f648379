namespace WitnessMark.PlanningOffice.Plans;

/// <summary>When a job is expected, in the order of work.</summary>
/// <param name="Start">First day of own work.</param>
/// <param name="End">Last day of own work.</param>
/// <param name="Over">The day what follows may begin: after cures and sent-out work.</param>
public sealed record PlannedJob(Guid Job, DateOnly Start, DateOnly End, DateOnly Over);
