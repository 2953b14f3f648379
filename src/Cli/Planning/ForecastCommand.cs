using System.CommandLine;
using WitnessMark.FrontOffice.Forecast;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.Cli.Planning;

/// <summary><c>wmark forecast</c></summary>
static class ForecastCommand
{
    /// <summary>Enough to know P90 of a network to some 0.5 % of its spread, in about a second.</summary>
    const int NetworkFutures = 200_000;

    public static Command Build(Desk desk)
    {
        var file = new Argument<string?>("FILE") { Description = "An activity network in JSON; without it the plan in the records.", Arity = ArgumentArity.ZeroOrOne };
        var db = new Option<string?>("--db") { Description = "The records' SQLite file." };
        var vehicle = new Option<string?>("--vehicle") { Description = "Name of the vehicle, when several have jobs." };
        var futures = new Option<int?>("--futures") { Description = $"How many futures: {ForecastPlanRequest.UsualFutures} of a plan, {NetworkFutures} of a network if not said." };
        var seed = new Option<ulong>("--seed") { Description = "The same seed gives the same futures.", DefaultValueFactory = _ => 1 };
        var json = Common.Json();
        return Common.Command("forecast", "Odds on the finish, milestones, hours and money of a plan; or on the end of an activity network: P10, P50 and P90 of the simulated futures.",
            "wmark forecast --db van.db", [file, db, vehicle, futures, seed, json], async (parsed, stop) =>
            {
                if (parsed.GetValue(file) is { } path)
                {
                    if (parsed.GetValue(db) is not null) throw new RefusedException(Refusal.Of("--db", parsed.GetValue(db), "give either a file or the records"));
                    var done = ForecastNetwork.Run(new(Desk.Read(path), parsed.GetValue(futures) ?? NetworkFutures, parsed.GetValue(seed)) { Hands = AllHands }, stop);
                    if (parsed.GetValue(json)) desk.WriteJson(ForecastWords.Figures(done));
                    else ForecastWords.Show(desk.Out, done);
                    return;
                }
                var plan = await Plan(desk, parsed.GetValue(db), parsed.GetValue(vehicle), stop);
                var forecast = ForecastPlan.Run(new(plan, parsed.GetValue(seed))
                {
                    Futures = parsed.GetValue(futures) ?? ForecastPlanRequest.UsualFutures,
                    Hands = AllHands,
                    Workers = Environment.ProcessorCount,
                }, stop: stop).Forecast;
                if (parsed.GetValue(json)) desk.WriteJson(ForecastWords.Figures(forecast));
                else ForecastWords.Show(desk.Out, forecast);
            });
    }

    static void AllHands(int parts, Action<int> part)
    {
        try
        {
            Parallel.For(0, parts, part);
        }
        catch (AggregateException all) when (all.InnerException is OperationCanceledException stopped)
        {
            throw stopped;
        }
    }

    static async Task<PlanInput> Plan(Desk desk, string? path, string? name, CancellationToken stop)
    {
        if (path is null) throw new RefusedException(Refusal.Of("FILE or --db", null, "name an activity network or a file of records"));
        var state = (await PlanOptions.Open(path, name, desk.Clock, stop)).State;
        return state.Jobs.Any(j => j.Row.State != JobState.Done) ? state.Input
            : throw new RefusedException(Refusal.Of("plan", null, "it has no open job; wmark plan jobs makes them from the routes"));
    }
}
