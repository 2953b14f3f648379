using WitnessMark.FrontOffice.PlanJobs;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.TakeInVehicle;

/// <summary>Where a vehicle that was taken in is kept.</summary>
public sealed record VehiclePorts(IVehicleStore Vehicles, IBenchStore Bench, IReadingLog Readings, IJobStore Jobs);

/// <summary>What was new.</summary>
/// <param name="Plan">Null when there was no plan among the files.</param>
public sealed record KeptVehicle(int Rows, int Readings, TakenPlan? Plan);

/// <summary>
/// Keeps a vehicle that was taken in whole. Everything has an id that follows from its name and place: broken off half-way and begun again it goes on
/// where it stopped, done twice nothing is doubled, and what a person has changed since stands.
/// </summary>
public static class KeepVehicle
{
    /// <param name="plan">Text of the typed plan; null when there is none.</param>
    /// <exception cref="Maths.RefusedException">A row of the plan is wrong; nothing of the vehicle is kept either.</exception>
    public static async Task<KeptVehicle> Run(TakeInResult taken, string? plan, VehiclePorts to, CancellationToken stop = default)
    {
        var file = taken.File;
        if (plan is not null) _ = PlanFile.Read(plan, file.Vehicle, file.Systems, file.Parts).Value;
        var rows = await to.Vehicles.TakeIn(file, stop);
        foreach (var sketch in taken.Sketches) await to.Bench.Save(sketch, basedOn: 0, stop);
        foreach (var folded in taken.Folded) await to.Bench.Save(folded, basedOn: 0, stop);
        foreach (var instrument in taken.Instruments) await to.Bench.Save(instrument, basedOn: 0, stop);
        // A reading kept before stands as it was taken, whenever the file is read again.
        var known = new HashSet<Guid>();
        foreach (var sample in file.Samples) known.UnionWith((await to.Readings.History(sample.Id, stop)).Readings.Select(r => r.Id));
        var readings = await to.Readings.Append([.. taken.Readings.Where(r => !known.Contains(r.Id))], stop);
        var planned = plan is not null && await to.Vehicles.Tree(file.Vehicle.Id, stop) is { } tree ? await TakeInPlan.Run(plan, tree, to.Jobs, stop) : null;
        return new(rows, readings, planned);
    }
}
