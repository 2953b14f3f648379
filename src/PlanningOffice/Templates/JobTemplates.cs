using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice.Templates;

/// <summary>From parts and their decided routes to linked jobs. Ids follow from the part and the template: generating twice adds nothing.</summary>
public static class JobTemplates
{
    public static Proposal Propose(PlanFacts facts, TemplateTable table)
    {
        var parts = facts.Parts.Where(p => p.Route is not null).Select(p => new PartJobs(p, facts, table)).Where(p => p.Jobs.Length > 0).ToList();
        var adjust = facts.Systems.SelectMany(s => AdjustOf(s, parts, facts, table)).ToList();
        var waits = Waits(parts, facts.RefitBefore);
        var wanted = parts.SelectMany(p => p.Jobs).Concat(adjust).Select(j => Linked(j, waits)).ToList();
        var cards = parts.Where(p => p.CardJob is not null).ToDictionary(p => p.Guessed, p => p.CardJob!.Value);
        var standing = facts.Standing.ToDictionary(j => j.Id);
        var wantedIds = wanted.Select(j => j.Id).Concat(parts.Select(p => p.CardJob).OfType<Guid>()).ToHashSet();
        return new(
            [.. wanted.Where(j => !standing.ContainsKey(j.Id))],
            [.. wanted.Where(j => standing.ContainsKey(j.Id)).Select(j => Relinked(standing[j.Id], j, waits, cards)).OfType<Job>()],
            [.. NoLonger(facts, table, wantedIds)],
            [.. facts.Parts.Where(p => p.Route is null)]);
    }

    public static Guid IdOf(Guid owner, string key) => NamedId.Of(owner, $"plan {key}");

    static IEnumerable<Job> AdjustOf(VehicleSystem system, List<PartJobs> parts, PlanFacts facts, TemplateTable table)
    {
        var back = parts.Where(p => p.Part.SystemId == system.Id).Select(p => p.Last).ToImmutableArray();
        if (back.IsEmpty) return [];
        var t = table.Adjust;
        return [Job.Plain(IdOf(system.Id, t.Key), facts.Vehicle, system.Id, null, $"{system.Name}: {t.Does}", t.Kind, t.HoursFor(1), Cost.Of(t.Money.Value, table.Currency))
            with { Needs = t.Needs, After = back }];
    }

    /// <summary>The refit order turned into waiting between refit jobs.</summary>
    static Job Linked(Job job, ILookup<Guid, Guid> waits) =>
        waits.Contains(job.Id) ? job with { After = [.. job.After.Union(waits[job.Id])] } : job;

    static ILookup<Guid, Guid> Waits(List<PartJobs> parts, ImmutableArray<(Guid First, Guid Then)> before)
    {
        var last = parts.ToDictionary(p => p.Part.Id, p => p.Last);
        return before.Where(b => last.ContainsKey(b.First) && last.ContainsKey(b.Then)).ToLookup(b => last[b.Then], b => last[b.First]);
    }

    /// <summary>Null when the kept job waits for all it must. Other links that the person took away stay away.</summary>
    /// <param name="cards">By the id of a guessed making job, the one whose card makes the part.</param>
    static Job? Relinked(Job kept, Job wanted, ILookup<Guid, Guid> waits, Dictionary<Guid, Guid> cards)
    {
        if (kept.State == JobState.Done) return null;
        // A card that came later takes the place of the guessed making job, wherever that was waited for.
        var after = kept.After.Select(a => cards.GetValueOrDefault(a, a)).Union(waits[kept.Id]);
        // A system's adjusting waits for every part that has come to it since.
        if (wanted.PartId is null) after = after.Union(wanted.After);
        ImmutableArray<Guid> all = [.. after];
        return all.ToHashSet().SetEquals(kept.After) ? null : kept with { After = all };
    }

    static IEnumerable<Job> NoLonger(PlanFacts facts, TemplateTable table, HashSet<Guid> wanted)
    {
        var keys = table.Routes.Values.SelectMany(r => r).Select(t => t.Key).Distinct().ToList();
        var known = facts.Parts.SelectMany(p => keys.Select(k => IdOf(p.Id, k))).ToHashSet();
        return facts.Standing.Where(j => j.State != JobState.Done && known.Contains(j.Id) && !wanted.Contains(j.Id));
    }
}
