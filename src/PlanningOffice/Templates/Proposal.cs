using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice.Templates;

/// <summary>From what the jobs of a vehicle are proposed.</summary>
/// <param name="Standing">Jobs already kept; they are left as the person edited them.</param>
/// <param name="RefitBefore">Pairs of parts: the first goes back on before the second.</param>
public sealed record PlanFacts(
    Guid Vehicle, ImmutableArray<VehicleSystem> Systems, ImmutableArray<Part> Parts, ImmutableArray<Job> Standing,
    ImmutableArray<(Guid First, Guid Then)> RefitBefore);

/// <summary>What is to be added to a plan.</summary>
/// <param name="Missing">Jobs that the routes ask for and that nobody has kept yet.</param>
/// <param name="Relinked">Kept jobs that wait for more than before: the refit order is known now, or a card makes the part.</param>
/// <param name="NoLonger">Kept open jobs that the decided route does not ask for any more; the person decides.</param>
/// <param name="Undecided">Parts without a route: nothing is planned for them.</param>
public sealed record Proposal(
    ImmutableArray<Job> Missing, ImmutableArray<Job> Relinked, ImmutableArray<Job> NoLonger, ImmutableArray<Part> Undecided);
