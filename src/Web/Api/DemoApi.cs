using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Api;

/// <summary>The demonstration vehicle, taken from the files that lie beside the host.</summary>
static class DemoApi
{
    public static void MapDemo(this IEndpointRouteBuilder api) => api.MapPost("demo", Load);

    static async Task<DemoLoaded> Load(IVehicleStore vehicles, IBenchStore bench, IReadingLog readings, IJobStore jobs, TimeProvider clock, CancellationToken stop)
    {
        var taken = TakeInVehicle.Run(new(Text("vehicle.csv"), Text("parts.csv"), Text("samples.csv"), Beside, clock.GetUtcNow()));
        var kept = await KeepVehicle.Run(taken, Beside("plan.csv"), new(vehicles, bench, readings, jobs), stop);
        return new(taken.File.Vehicle.Id, taken.File.Vehicle.Name, kept.Rows, kept.Readings, kept.Plan?.JobsKept ?? 0);
    }

    static string Text(string name) =>
        Beside(name) ?? throw new RefusedException(Refusal.Of("demonstration", name, "the file is not beside the program; put the folder demo back beside it"));

    /// <summary>Null when it is not there, or would lie outside the folder.</summary>
    static string? Beside(string name)
    {
        var root = Path.Combine(AppContext.BaseDirectory, "demo") + Path.DirectorySeparatorChar;
        var path = Path.GetFullPath(Path.Combine(root, name));
        return path.StartsWith(root, StringComparison.Ordinal) && File.Exists(path) ? File.ReadAllText(path) : null;
    }
}
