using System.CommandLine;
using WitnessMark.FrontOffice.Forecast;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Records;

namespace WitnessMark.Cli.Planning;

/// <summary><c>wmark forecast</c></summary>
static class ForecastCommand
{
    public static Command Build(Desk desk)
    {
        var db = new Option<string>("--db") { Description = "The records' SQLite file.", Required = true };
        var seed = new Option<ulong>("--seed") { Description = "The same seed gives the same futures.", DefaultValueFactory = _ => 1 };
        var json = Common.Json();
        return Common.Command("forecast", "Hours and money over all open jobs: P10, P50 and P90 of the simulated futures.", "wmark forecast --db van.db", [db, seed, json], async (parsed, stop) =>
        {
            var forecast = Forecast.Run(new([.. await Jobs(parsed.GetRequiredValue(db), stop)], parsed.GetValue(seed)), stop);
            if (parsed.GetValue(json)) desk.WriteJson(forecast);
            else Show(desk.Out, forecast);
        });
    }

    static async Task<List<Job>> Jobs(string path, CancellationToken stop)
    {
        if (!File.Exists(path)) throw new RefusedException(Refusal.Of("--db", path, "name a file of records that is there"));
        var room = await RecordRoom.Open(path, stop);
        var jobs = new List<Job>();
        foreach (var vehicle in await room.Vehicles.Vehicles(stop))
            jobs.AddRange((await room.Jobs.Jobs(vehicle.Row.Id, stop)).Select(j => j.Row));
        return jobs;
    }

    static void Show(TextWriter to, JobForecast forecast)
    {
        to.WriteLine($"{forecast.Jobs} open {(forecast.Jobs == 1 ? "job" : "jobs")}");
        to.WriteLine($"hours: {Figures(forecast.Hours, "0.0")}");
        foreach (var money in forecast.Money) to.WriteLine($"{money.Currency}: {Figures(money.Amount, "0.00")}");
        foreach (var caution in forecast.Cautions) to.WriteLine($"! {caution}");
    }

    static string Figures(Spread s, string format) =>
        $"P10 {s.P10.Value.ToString(format)}, P50 {s.P50.Value.ToString(format)}, P90 {s.P90.Value.ToString(format)} (± {s.P90.Std.ToString(format)} of the simulation at P90)";
}
