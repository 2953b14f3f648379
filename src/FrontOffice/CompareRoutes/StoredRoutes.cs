using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Judging;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.FrontOffice.CompareRoutes;

/// <summary>What the records say of one part, gathered for the comparison.</summary>
public static class StoredRoutes
{
    /// <summary>Weeks that the person's mean hours are taken over.</summary>
    const int Weeks = 13;

    /// <summary>Null when the vehicle has no such part.</summary>
    /// <param name="state">Of the vehicle's plan.</param>
    public static async Task<CompareRequest?> Open(PlanState.PlanState state, Guid part, Shop shop, IStoresDesk desk, IReadingLog readings, CancellationToken stop = default)
    {
        var tree = state.Tree;
        if (tree.Parts.FirstOrDefault(p => p.Row.Id == part).Row is not { } found) return null;
        var vehicle = tree.Vehicle.Row.Id;
        var firms = (await desk.Firms.Of(vehicle, stop)).ToDictionary(f => f.Row.Id, f => f.Row.Name);
        var gone = (await desk.GivenBack.Of(vehicle, stop)).Select(g => g.SampleId).ToHashSet();
        var samples = ImmutableArray.CreateBuilder<SampleState>();
        foreach (var sample in tree.SamplesOf(part).Select(s => s.Row))
        {
            var missing = sample.StillMissing((await readings.History(sample.Id, stop)).Standing).Length;
            // What was read of a sample that has gone back still serves; what was not, never will.
            if (!gone.Contains(sample.Id) || missing == 0) samples.Add(new(sample, missing));
        }
        var plan = state.Next;
        return new(vehicle, found, tree.Systems.FirstOrDefault(s => s.Row.Id == found.SystemId).Row?.Name ?? "", shop, state.Today, HoursAWeek(state))
        {
            Kept = [.. plan.Jobs.Where(j => j.PartId == part)],
            Condition = Grades.Latest(await desk.Conditions.Of(vehicle, stop)).GetValueOrDefault(part),
            Samples = samples.ToImmutable(),
            Quotes = [.. (await desk.Quotes.Of(vehicle, stop)).Select(q => new GivenQuote(q.Row, firms.GetValueOrDefault(q.Row.FirmId, "a firm no longer listed")))],
            Rates = await desk.Rates.Of(vehicle, stop),
            Bias = plan.Bias,
        };
    }

    static double HoursAWeek(PlanState.PlanState state) => Math.Max(0.1, state.Calendar.HoursFrom(state.Today, 7 * Weeks) / Weeks);
}
