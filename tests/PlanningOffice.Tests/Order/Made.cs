using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order;

namespace WitnessMark.PlanningOffice.Tests.Order;

/// <summary>Small projects made by chance, none copied from a library.</summary>
static class Made
{
    public static Project Project(ulong seed, int count = 14, int resources = 2)
    {
        var chance = new Chance(seed);
        var capacities = Enumerable.Range(0, resources).Select(_ => 4 + chance.Below(6)).ToImmutableArray();
        var activities = Enumerable.Range(0, count).Select(i => new Activity(
            chance.Below(9),
            [.. capacities.Select(c => chance.Below(c + 1))],
            [.. Enumerable.Range(i + 1, count - i - 1).Where(_ => chance.Uniform() < 0.15)])
        {
            Release = chance.Below(8) == 0 ? chance.Below(10) : 0,
        });
        return global::WitnessMark.PlanningOffice.Order.Project.Of([.. activities], capacities).Value;
    }

    public static Func<bool> After(int steps) => () => steps-- <= 0;
}
