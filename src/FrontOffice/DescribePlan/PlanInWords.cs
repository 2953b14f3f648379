using System.Collections.Immutable;

namespace WitnessMark.FrontOffice.DescribePlan;

/// <summary>A few sentences under a heading.</summary>
public sealed record WordGroup(string Title, ImmutableArray<string> Lines);

/// <summary>A feature as it is told: where it is, how large, how sure.</summary>
/// <param name="State">"held" or why it is not: short, so that a change of it can be told in one breath.</param>
/// <param name="Line">The whole sentence.</param>
public sealed record FeatureTold(string Id, string State, string Line);

/// <summary>A plan told instead of shown: what a picture says at a glance, in an order that an ear can follow.</summary>
public sealed record PlanInWords(string Headline, ImmutableArray<FeatureTold> Features, ImmutableArray<WordGroup> Groups)
{
    /// <summary>What has become different, in one breath; empty when nothing has that matters.</summary>
    public string Since(PlanInWords? before)
    {
        if (before is null) return Headline;
        var old = before.Features.ToDictionary(f => f.Id, f => f.State);
        var changed = Features.Where(f => old.GetValueOrDefault(f.Id) != f.State).Select(f => $"{f.Id}: {f.State}").ToList();
        var doubts = Groups.Where(g => g.Title == DescribePlan.Doubtful && !before.Groups.Any(b => b.Title == g.Title && b.Lines.SequenceEqual(g.Lines))).SelectMany(g => g.Lines);
        string[] words = [.. doubts, .. Few(changed), .. Headline == before.Headline ? Array.Empty<string>() : [Headline]];
        return string.Join(" ", words);
    }

    /// <summary>More than a few changes are counted, not read out.</summary>
    static string[] Few(List<string> changed) => changed.Count switch
    {
        0 => [],
        <= 4 => [string.Join("; ", changed) + "."],
        var n => [$"{string.Join("; ", changed.Take(3))}; and {n - 3} more."],
    };
}
