using System.CommandLine;
using System.Text;
using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Records;

namespace WitnessMark.Cli.Demo;

/// <summary><c>wmark demo load</c></summary>
static class LoadCommand
{
    public static Command Build(Desk desk)
    {
        var from = new Option<string>("--from") { Description = "Folder with vehicle.csv, parts.csv, samples.csv, the sheets they name and, if there is one, plan.csv.", DefaultValueFactory = _ => "demo" };
        var db = new Option<string>("--db") { Description = "The records' SQLite file; made when it is not there.", Required = true };
        var json = Common.Json();
        return Common.Command("load", "Takes a vehicle from typed files into the records. Taken in twice, nothing is doubled.", "wmark demo load --from demo --db van.db", [from, db, json], async (parsed, stop) =>
        {
            var folder = parsed.GetRequiredValue(from);
            var taken = TakeInVehicle.Run(new(Text(folder, "vehicle.csv"), Text(folder, "parts.csv"), Text(folder, "samples.csv"), name => Inside(folder, name), desk.Clock.GetUtcNow()));
            var room = await Open(parsed.GetRequiredValue(db), stop);
            var kept = await KeepVehicle.Run(taken, Inside(folder, "plan.csv"), new(room.Vehicles, room.Bench, room.Readings, room.Jobs), stop);
            var plan = kept.Plan;
            var counts = new { Vehicle = taken.File.Vehicle.Name, Systems = taken.File.Systems.Length, Parts = taken.File.Parts.Length, Samples = taken.File.Samples.Length, Readings = taken.Readings.Length, NewRows = kept.Rows, NewReadings = kept.Readings, NewJobs = plan?.JobsKept ?? 0, NewMilestones = plan?.MilestonesKept ?? 0 };
            if (parsed.GetValue(json)) desk.WriteJson(counts);
            else desk.Out.WriteLine($"{counts.Vehicle}: {counts.Parts} parts in {counts.Systems} systems, {counts.Samples} samples, {counts.Readings} readings ({kept.Rows} rows and {kept.Readings} readings new){(plan is null ? "" : $"; {counts.NewJobs} jobs and {counts.NewMilestones} milestones are new")}.");
        });
    }

    static async Task<RecordRoom> Open(string path, CancellationToken stop)
    {
        if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder) Directory.CreateDirectory(folder);
        return await RecordRoom.Open(path, stop);
    }

    static string Text(string folder, string name) => Encoding.UTF8.GetString(Desk.Read(Path.Combine(folder, name)));

    /// <summary>A sheet by its name; null when it is not there or lies outside the folder.</summary>
    static string? Inside(string folder, string name)
    {
        var root = Path.GetFullPath(folder) + Path.DirectorySeparatorChar;
        var path = Path.GetFullPath(Path.Combine(folder, name));
        return path.StartsWith(root, StringComparison.Ordinal) && File.Exists(path) ? Text(folder, name) : null;
    }
}
