using WitnessMark.FrontOffice.PlanJobs;
using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Records;

namespace WitnessMark.Browser.Planning;

/// <summary>The demonstration van with its plan as a person typed it.</summary>
static class PlannedVan
{
    public static async Task<TakeInResult> Load(string database)
    {
        var van = await DemoVan.Load(database);
        await Plan(database, van);
        return van;
    }

    public static async Task Plan(string database, TakeInResult van)
    {
        var room = await RecordRoom.Open(database);
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "WitnessMark.slnx"))) root = root.Parent;
        var tree = (await room.Vehicles.Tree(van.File.Vehicle.Id))!;
        await TakeInPlan.Run(await File.ReadAllTextAsync(Path.Combine(root!.FullName, "demo", "plan.csv")), tree, room.Jobs);
    }
}
