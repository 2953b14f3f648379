using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Templates;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.PlanJobs;

/// <summary>What can hurt someone at a job of a vehicle: by its part, its system and the kind of work, with what its card says.</summary>
public static class JobCautions
{
    public static Func<Job, ImmutableArray<string>> Of(VehicleTree tree)
    {
        var parts = tree.Parts.ToDictionary(p => p.Row.Id, p => p.Row);
        var systems = tree.Systems.ToDictionary(s => s.Row.Id, s => s.Row.Name);
        return job => [.. Cautions.For([.. PartHazards.Of(job, PartOf(job), SystemOf(job))]).Concat(job.Card is { } card ? card.Cautions.Concat(card.Steps.SelectMany(s => s.Cautions)) : []).Distinct()];

        Part? PartOf(Job job) => job.PartId is { } id ? parts.GetValueOrDefault(id) : null;
        string SystemOf(Job job) => job.SystemId is { } id ? systems.GetValueOrDefault(id, "") : "";
    }
}
