using System.CommandLine;
using WitnessMark.FrontOffice.PlanNext;
using WitnessMark.PlanningOffice.Next;

namespace WitnessMark.Cli.Planning;

/// <summary><c>wmark next</c></summary>
static class NextJobCommand
{
    public static Command Build(Desk desk)
    {
        var (kept, json) = (new PlanOptions(), Common.Json());
        var hours = Common.Number("--hours", "Hours at hand.");
        hours.Required = true;
        var noHelper = Switch("--no-helper", "Nobody to lend a hand.");
        var raining = Switch("--raining", "No dry place for paint or outdoor work.");
        var evening = Switch("--evening", "No daylight, and quiet hours.");
        var (noBay, noBench) = (Switch("--bay-taken", "The bay is taken."), Switch("--bench-taken", "The bench is taken."));
        var small = Switch("--small", "Only jobs that are over within the time even if they go badly.");
        return Common.Command("next", "What to do in the time at hand: ready jobs that fit, best first, each with its reason.", "wmark next --db van.db --hours 3 --no-helper --raining",
            [.. kept.All, hours, noHelper, raining, evening, noBay, noBench, small, json], async (parsed, stop) =>
            {
                var time = new FreeTime(DateOnly.FromDateTime(desk.Clock.GetUtcNow().UtcDateTime), parsed.GetValue(hours))
                {
                    Helper = !parsed.GetValue(noHelper),
                    Dry = !parsed.GetValue(raining),
                    Daylight = !parsed.GetValue(evening),
                    NoiseAllowed = !parsed.GetValue(evening),
                    BayFree = !parsed.GetValue(noBay),
                    BenchFree = !parsed.GetValue(noBench),
                    SmallOnly = parsed.GetValue(small),
                };
                var list = PlanNext.Run((await kept.Open(parsed, desk.Clock, stop)).State.Next, time);
                if (parsed.GetValue(json)) desk.WriteJson(new { Jobs = list.Jobs.Select(j => new { j.Job.Id, j.Job.Title, j.Why, StopAfter = j.StopAfter?.Number, j.Job.Hours, j.Cautions }), list.Blocks });
                else Show(desk.Out, list);
            });
    }

    /// <summary>As many as a person reads before choosing.</summary>
    const int MostShown = 10;

    static void Show(TextWriter to, NextList list)
    {
        foreach (var (job, i) in list.Jobs.Take(MostShown).Select((j, i) => (j, i)))
        {
            to.WriteLine($"{i + 1}. {job.Job.Title} ({job.Job.Hours.Likely:0.#} h): {job.Why}");
            foreach (var caution in job.Cautions) to.WriteLine($"   ! {caution}");
        }
        if (list.Jobs.Length > MostShown) to.WriteLine($"and {list.Jobs.Length - MostShown} more.");
        if (!list.Jobs.IsEmpty) return;
        to.WriteLine("Nothing fits.");
        foreach (var block in list.Blocks) to.WriteLine(block);
    }

    static Option<bool> Switch(string name, string does) => new(name) { Description = does };
}
