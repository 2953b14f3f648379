using System.Collections.Immutable;

namespace WitnessMark.Web.Client.PlanningOffice.OrderOfWork;

/// <summary>Which jobs changed their place between two orders.</summary>
public static class OrderMoves
{
    /// <summary>
    /// The fewest jobs that must be taken out so that the rest stand in the same order in both: what is left of the new order when its
    /// longest part that runs as before is kept.
    /// </summary>
    public static ImmutableArray<Guid> Of(ImmutableArray<Guid> before, ImmutableArray<Guid> now)
    {
        var place = before.Select((id, i) => (id, i)).ToDictionary(x => x.id, x => x.i);
        Guid[] both = [.. now.Where(place.ContainsKey)];
        var (ends, back) = (new List<int>(), new int[both.Length]);
        for (var i = 0; i < both.Length; i++)
        {
            var at = ends.Count(e => place[both[e]] < place[both[i]]);
            back[i] = at > 0 ? ends[at - 1] : -1;
            if (at == ends.Count) ends.Add(i);
            else ends[at] = i;
        }
        var kept = new HashSet<Guid>();
        for (var i = ends.Count > 0 ? ends[^1] : -1; i >= 0; i = back[i]) kept.Add(both[i]);
        return [.. both.Where(id => !kept.Contains(id))];
    }
}
