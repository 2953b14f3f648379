using WitnessMark.PlanningOffice.Order.Search;

namespace WitnessMark.PlanningOffice.Order;

/// <summary>Serial schedule generation by a given priority: no search.</summary>
public static class SerialSchedule
{
    /// <summary>Of the activities whose predecessors are placed, the one of least rank goes next, to the earliest slot it fits.</summary>
    /// <param name="rank">One for each activity; equal ranks keep the project's own order.</param>
    public static Schedule By(Project project, ReadOnlySpan<int> rank)
    {
        var web = new Web(project, beyond: 0);
        var open = web.Before.Select(b => b.Length).ToArray();
        var ready = new PriorityQueue<int, (int, int)>();
        for (var i = 0; i < web.Count; i++)
            if (open[i] == 0) ready.Enqueue(i, (rank[i], web.Position[i]));
        var list = new List<int>(web.Count);
        while (ready.TryDequeue(out var i, out _))
        {
            list.Add(i);
            foreach (var s in web.After[i])
                if (--open[s] == 0) ready.Enqueue(s, (rank[s], web.Position[s]));
        }
        var starts = new int[web.Count];
        new Decoder(web).Serial([.. list], starts);
        return new([.. starts]);
    }
}
