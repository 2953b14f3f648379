using System.CommandLine;
using System.Text;
using WitnessMark.FrontOffice.OrderWork;
using WitnessMark.FrontOffice.PlanJobs;
using WitnessMark.FrontOffice.PlanNext;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Plans;

namespace WitnessMark.Cli.Planning;

/// <summary><c>wmark plan</c></summary>
static class PlanCommand
{
    public static Command Build(Desk desk) => new("plan", "The plan of a vehicle: jobs from routes, checks, orders.")
    {
        Jobs(desk),
        TakeIn(desk),
        Check(desk),
        Order(desk),
        OrderToday(desk),
    };

    static Command Jobs(Desk desk)
    {
        var (kept, json) = (new PlanOptions(), Common.Json());
        var dry = new Option<bool>("--dry-run") { Description = "Show what would be added, keep nothing." };
        return Common.Command("jobs", "Adds the jobs that decided routes ask for and that are missing in the plan. Again, nothing is doubled and edits stay.",
            "wmark plan jobs --db van.db --dry-run", [.. kept.All, dry, json], async (parsed, stop) =>
            {
                var plan = await kept.Open(parsed, desk.Clock, stop);
                var result = PlanJobs.Run(new(plan.Tree, plan.Rows));
                var saved = parsed.GetValue(dry) ? 0 : await PlanJobs.Keep(result, plan.Room.Jobs, plan.Jobs, stop);
                if (parsed.GetValue(json)) desk.WriteJson(new { result.Proposal, result.Faults, result.Cautions, Saved = saved });
                else Show(desk.Out, result, saved);
            });
    }

    static Command TakeIn(Desk desk)
    {
        var (file, kept, json) = (Common.File("The plan in tables: milestones, places, money."), new PlanOptions(), Common.Json());
        return Common.Command("take-in", "Takes in a typed plan and the jobs that the routes ask for. Taken in twice, nothing is doubled.",
            "wmark plan take-in demo/plan.csv --db van.db", [file, .. kept.All, json], async (parsed, stop) =>
            {
                var plan = await kept.Open(parsed, desk.Clock, stop);
                var taken = await TakeInPlan.Run(Encoding.UTF8.GetString(Desk.Read(parsed.GetRequiredValue(file))), plan.Tree, plan.Room.Jobs, stop);
                var counts = new { taken.JobsKept, taken.MilestonesKept, taken.MeansKept };
                if (parsed.GetValue(json)) desk.WriteJson(counts);
                else desk.Out.WriteLine($"{counts.JobsKept} jobs and {counts.MilestonesKept} milestones are new{(counts.MeansKept ? ", with places and money" : "")}.");
            });
    }

    static void Show(TextWriter to, PlanJobsResult result, int saved)
    {
        foreach (var words in result.Words) to.WriteLine(words);
        foreach (var job in result.Proposal.Missing) to.WriteLine($"  {job.Title} ({job.Kind.Words()}, {job.Hours.Low:0.#}/{job.Hours.Likely:0.#}/{job.Hours.High:0.#} h)");
        foreach (var fault in result.Faults) to.WriteLine($"! {fault.Words}");
        foreach (var caution in result.Cautions) to.WriteLine($"! {caution}");
        to.WriteLine($"{saved} jobs kept.");
    }

    static Command Check(Desk desk)
    {
        var (kept, json) = (new PlanOptions(), Common.Json());
        return Common.Command("check", "Tells what is wrong with the plan: rings of waiting, unknown jobs, jobs done out of turn.", "wmark plan check --db van.db", [.. kept.All, json], async (parsed, stop) =>
        {
            var plan = await kept.Open(parsed, desk.Clock, stop);
            var faults = PlanCheck.Faults(plan.Rows);
            if (parsed.GetValue(json)) desk.WriteJson(new { Jobs = plan.Rows.Length, Faults = faults });
            else
            {
                foreach (var fault in faults) desk.Out.WriteLine(fault.Words);
                if (faults.IsEmpty) desk.Out.WriteLine($"{plan.Rows.Length} jobs, {PlanCheck.Ready(plan.Rows).Count()} of them ready: nothing is wrong.");
            }
        });
    }

    static Command Order(Desk desk)
    {
        var (kept, json) = (new PlanOptions(), Common.Json());
        var seconds = Common.Number("--seconds", "How long to search.");
        seconds.DefaultValueFactory = _ => 3;
        var keep = new Option<bool>("--keep") { Description = "Let the order found stand." };
        return Common.Command("order", "Puts the open jobs in order: early milestones first, waits beside work, few jobs moved.",
            "wmark plan order --db van.db --seconds 3 --keep", [.. kept.All, seconds, keep, json], async (parsed, stop) =>
            {
                var plan = await kept.Open(parsed, desk.Clock, stop);
                var found = OrderWork.Run(new(plan.State.Facts, plan.State.Means, parsed.GetValue(seconds), 1), desk.Clock, stop: stop);
                var vehicle = plan.Tree.Vehicle.Row.Id;
                if (parsed.GetValue(keep)) await plan.Room.Jobs.Save(found.Standing(vehicle, plan.State.Today), (await plan.Room.Jobs.Order(vehicle, stop)).Version, stop);
                var titles = plan.Rows.ToDictionary(j => j.Id, j => j.Title);
                if (parsed.GetValue(json)) desk.WriteJson(new { found.Order.Hours, found.Order.LeastHours, Moved = found.Order.Moved.Length, Jobs = found.Days.Select(d => new { Id = d.Job, Title = titles[d.Job], d.Start, d.End, d.Over }) });
                else
                {
                    foreach (var d in found.Days) desk.Out.WriteLine($"{d.Start:yyyy-MM-dd} to {d.End:yyyy-MM-dd}  {titles[d.Job]}");
                    desk.Out.WriteLine($"{found.Order.Hours:0} hours of work and waiting; no order can be under {found.Order.LeastHours:0}. {found.Order.Moved.Length} jobs moved{(parsed.GetValue(keep) ? "; the order stands" : "")}.");
                }
            });
    }

    static Command OrderToday(Desk desk)
    {
        var (kept, json) = (new PlanOptions(), Common.Json());
        var ahead = new Option<int>("--ahead") { Description = "Days to look ahead.", DefaultValueFactory = _ => 7 };
        return Common.Command("order-today", "What to order now so that nothing waits later.", "wmark plan order-today --db van.db", [.. kept.All, ahead, json], async (parsed, stop) =>
        {
            var days = parsed.GetValue(ahead);
            if (days is < 0 or > 3650) throw new RefusedException(Refusal.Of("--ahead", $"{days}", "give days from 0 to 3650"));
            var plan = await kept.Open(parsed, desk.Clock, stop);
            var orders = PlanNext.OrderToday(plan.State.Next, plan.State.Today, days);
            if (parsed.GetValue(json)) desk.WriteJson(orders.Select(o => new { Job = o.Job.Title, Lead = o.Lead.Words, o.NeededBy, o.LatestDay, o.Lead.Price, o.Words }));
            else
            {
                foreach (var order in orders) desk.Out.WriteLine(order.Words);
                if (orders.IsEmpty) desk.Out.WriteLine("Nothing needs ordering yet.");
            }
        });
    }
}
