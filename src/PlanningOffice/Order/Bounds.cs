using WitnessMark.PlanningOffice.Order.Search;

namespace WitnessMark.PlanningOffice.Order;

/// <summary>Makespans, in slots, that no schedule of a project can be under.</summary>
public static class Bounds
{
    /// <summary>The greatest of all bounds here.</summary>
    public static int Of(Project project)
    {
        var web = new Web(project, 0);
        return Math.Max(Critical(web), Math.Max(Energy(web), Pairs(web)));
    }

    /// <summary>The longest chain of activities, releases counted.</summary>
    public static int CriticalPath(Project project) => Critical(new Web(project, 0));

    static int Critical(Web web) => Enumerable.Range(0, web.Count).Max(i => web.Heads[i] + web.Durations[i] + web.Tails[i]);

    /// <summary>
    /// Work between a head and a tail: activities that cannot start before slot h and that leave at least q slots after
    /// them need h + work / capacity + q.
    /// </summary>
    static int Energy(Web web)
    {
        var best = 0;
        var byTail = Enumerable.Range(0, web.Count).OrderByDescending(i => web.Tails[i]).ToArray();
        foreach (var head in web.Heads.Distinct().Order().Take(500))
            for (var r = 0; r < web.Capacities.Length; r++)
            {
                if (web.Capacities[r] == 0) continue;
                var work = 0L;
                foreach (var i in byTail)
                {
                    if (web.Heads[i] < head || web.Durations[i] == 0 || web.Needs[i][r] == 0) continue;
                    work += (long)web.Durations[i] * web.Needs[i][r];
                    best = Math.Max(best, head + (int)((work + web.Capacities[r] - 1) / web.Capacities[r]) + web.Tails[i]);
                }
            }
        return best;
    }

    /// <summary>Two activities that cannot run together come one after the other.</summary>
    static int Pairs(Web web)
    {
        var best = 0;
        for (var i = 0; i < web.Count && web.Count <= 3000; i++)
            for (var j = 0; j < i; j++)
                if (web.Durations[i] > 0 && web.Durations[j] > 0 && Clash(web, i, j))
                    best = Math.Max(best, web.Durations[i] + web.Durations[j] + Math.Min(web.Heads[i] + web.Tails[j], web.Heads[j] + web.Tails[i]));
        return best;
    }

    static bool Clash(Web web, int i, int j)
    {
        for (var r = 0; r < web.Capacities.Length; r++)
            if (web.Needs[i][r] + web.Needs[j][r] > web.Capacities[r]) return true;
        return false;
    }
}
