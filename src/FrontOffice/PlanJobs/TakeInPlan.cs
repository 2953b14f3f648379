using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.PlanJobs;

/// <summary>What was new when a typed plan was taken in.</summary>
public sealed record TakenPlan(PlanJobsResult Jobs, int JobsKept, int MilestonesKept, bool MeansKept);

/// <summary>Takes a typed plan into the records, with the jobs that the vehicle's routes ask for. Taken in twice, nothing is doubled, and what the person changed since stands.</summary>
public static class TakeInPlan
{
    /// <exception cref="RefusedException">A row is wrong or the plan would have no order; nothing is kept.</exception>
    public static async Task<TakenPlan> Run(string text, VehicleTree tree, IJobStore store, CancellationToken stop = default)
    {
        var vehicle = tree.Vehicle.Row;
        var file = PlanFile.Read(text, vehicle, [.. tree.Systems.Select(s => s.Row)], [.. tree.Parts.Select(p => p.Row)]).Value;
        var kept = await store.Jobs(vehicle.Id, stop);
        var jobs = PlanJobs.Run(new(tree, [.. kept.Select(j => j.Row)]));
        var jobsKept = await PlanJobs.Keep(jobs, store, kept, stop);
        var known = (await store.Milestones(vehicle.Id, stop)).Select(m => m.Row.Id).ToHashSet();
        var fresh = file.Milestones.Where(m => !known.Contains(m.Id)).ToList();
        foreach (var milestone in fresh) await store.Save(milestone, basedOn: 0, stop);
        var meansKept = (await store.Means(vehicle.Id, stop)).Version == 0;
        if (meansKept) await store.Save(file.Means, basedOn: 0, stop);
        return new(jobs, jobsKept, fresh.Count, meansKept);
    }
}
