using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Plans;
using WitnessMark.PlanningOffice.Templates;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.PlanJobs;

/// <summary>A vehicle with its decided routes, and the jobs kept so far.</summary>
public sealed record PlanJobsRequest(VehicleTree Tree, ImmutableArray<Job> Kept)
{
    /// <summary>Pairs of parts: the first goes back on before the second.</summary>
    public ImmutableArray<(Guid First, Guid Then)> RefitBefore { get; init; } = [];

    public TemplateTable Table { get; init; } = UsualTable.Table;
}

/// <param name="Faults">Of the plan as it would stand.</param>
/// <param name="Cautions">Of the jobs proposed, each once.</param>
public sealed record PlanJobsResult(Proposal Proposal, ImmutableArray<PlanFault> Faults, ImmutableArray<string> Cautions)
{
    /// <summary>One sentence for each thing a person must know before he says yes.</summary>
    public IEnumerable<string> Words =>
    [
        $"{Count(Proposal.Missing.Length, "job")} to add, {Count(Proposal.Relinked.Length, "kept job")} to wait for more than before.",
        .. Proposal.NoLonger.Select(j => $"\"{j.Title}\" no longer belongs to the route that was decided; take it off or leave it."),
        .. Proposal.Undecided.IsEmpty ? Array.Empty<string>()
            : [$"Nothing is planned for {string.Join(", ", Proposal.Undecided.Select(p => p.Name))}: no route is decided."],
    ];

    static string Count(int n, string what) => $"{n} {what}{(n == 1 ? "" : "s")}";
}

/// <summary>From decided routes to the jobs that are still missing in the plan.</summary>
public static class PlanJobs
{
    public static PlanJobsResult Run(PlanJobsRequest request)
    {
        var tree = request.Tree;
        var proposal = JobTemplates.Propose(
            new(tree.Vehicle.Row.Id, [.. tree.Systems.Select(s => s.Row)], [.. tree.Parts.Select(p => p.Row)], request.Kept, request.RefitBefore), request.Table);
        var changed = proposal.Relinked.Select(j => j.Id).ToHashSet();
        ImmutableArray<Job> whole = [.. request.Kept.Where(j => !changed.Contains(j.Id)), .. proposal.Relinked, .. proposal.Missing];
        var cautions = JobCautions.Of(tree);
        return new(proposal, PlanCheck.Faults(whole), [.. proposal.Missing.SelectMany(j => cautions(j)).Distinct()]);
    }

    /// <summary>
    /// Keeps what was proposed. A job that somebody changed meanwhile stands as he left it.
    /// </summary>
    /// <returns>How many jobs were kept.</returns>
    /// <exception cref="RefusedException">The plan would have no order; nothing is kept.</exception>
    public static async Task<int> Keep(PlanJobsResult result, IJobStore store, ImmutableArray<Versioned<Job>> kept, CancellationToken stop = default)
    {
        if (result.Faults.FirstOrDefault(f => f.Stops) is { } fault) throw new RefusedException(new(fault.Words));
        var versions = kept.ToDictionary(j => j.Row.Id, j => j.Version);
        var saved = await store.Add(result.Proposal.Missing, stop);
        foreach (var job in result.Proposal.Relinked)
            if (!(await store.Save(job, versions.GetValueOrDefault(job.Id), stop)).Clash) saved++;
        return saved;
    }
}
