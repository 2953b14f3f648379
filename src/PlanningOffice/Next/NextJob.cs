using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Next;

/// <summary>A job that can be done now.</summary>
/// <param name="Why">One sentence.</param>
/// <param name="StopAfter">Step of its card to stop after, when it is longer than the time at hand; null when it fits.</param>
/// <param name="Cautions">What can hurt someone; they remind, local codes and licensed practice decide.</param>
public sealed record NextJob(Job Job, string Why, Step? StopAfter, ImmutableArray<string> Cautions);

/// <summary>What can be done now, and what stands in the way of the rest.</summary>
/// <param name="Jobs">Best first.</param>
/// <param name="Blocks">What keeps most of the open jobs from being done now, one sentence each, the greatest first.</param>
public sealed record NextList(ImmutableArray<NextJob> Jobs, ImmutableArray<string> Blocks);

/// <summary>A supply or sent-out work to be ordered.</summary>
/// <param name="NeededBy">Expected start of the job that waits for it.</param>
/// <param name="LatestDay">Ordered on this day it comes in time in nine cases of ten.</param>
public sealed record OrderNow(Job Job, Lead Lead, DateOnly NeededBy, DateOnly LatestDay, string Words);
