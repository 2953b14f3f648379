using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.Bench;

/// <summary>An invented plan of any size: chains in which each job waits for one or two before it, with places, needs, supplies and cures.</summary>
static class LargePlan
{
    public static PlanInput Of(int jobs, bool money)
    {
        var chance = new Chance(4);
        var listed = new List<Job>();
        for (var i = 0; i < jobs; i++)
        {
            var low = chance.Uniform(0.3, 1.5);
            var job = Job.Plain(Id(i, 0), Guid.Empty, Id(i % 12, 1), null, $"job {i + 1}", (WorkKind)(i % 11),
                new(low, low + chance.Uniform(0.1, 1), low + chance.Uniform(1.2, 5)), money ? new(0, 5, 40, "GBP") : Cost.None("GBP"));
            listed.Add(job with
            {
                Needs = new(i % 7 == 0 ? WorkPlace.Bay : i % 3 == 0 ? WorkPlace.Bench : WorkPlace.Anywhere, i % 41 == 0, i % 37 == 0, i % 13 == 0, i % 11 == 0),
                After = [.. Enumerable.Range(0, 2).Select(_ => i - 1 - chance.Below(25)).Where(p => p >= 0).Distinct().Select(p => Id(p, 0))],
                Leads = [.. Leads(i)],
            });
        }
        var purse = new Purse("GBP", money ? new DatedMoney(First, 2000, "saved") : null, new(150, 250, 400), [], []);
        return new([.. listed], [], new(Guid.Empty, 2, 2, purse), First)
        {
            Calendar = WorkCalendar.Usual with { Week = [new(0, 0), .. Enumerable.Repeat(new DayHours(0, 2), 5), new(8, 0)], HelperChance = [0, 0, 0, 0, 0, 0, 0.7], Leave = [new(new(2027, 8, 1), new(2027, 8, 14), "sea")] },
            Pace = new SharedPace(0.25, 0.3),
            Orders = [.. listed.SelectMany(j => j.Leads.Select((l, k) => new OrderDay(j.Id, k, First)))],
        };
    }

    static readonly DateOnly First = new(2027, 1, 4);

    static ImmutableArray<Lead> Leads(int i) =>
        i % 20 == 0 ? [new("stock", LeadSide.Before, new(3, 10, 40), Cost.None("GBP"), 0, null, false)]
        : i % 17 == 0 ? [new("paint cures", LeadSide.Behind, new(0.5, 1, 3), Cost.None("GBP"), 0, null, false)] : [];

    static Guid Id(int a, short b) => new(a, b, 7, [1, 2, 3, 4, 5, 6, 7, 8]);
}
