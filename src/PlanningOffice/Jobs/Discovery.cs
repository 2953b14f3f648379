using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice;

/// <summary>Hidden work that a job may bring to light: rust under the floor, a cracked block.</summary>
/// <param name="Words">What may be found.</param>
/// <param name="Odds">Chance that it is so, 0 to 1, as far as is known now.</param>
/// <param name="Cause">A name shared with other discoveries that go together (wet, frost, an old crash); empty when it stands alone.</param>
/// <param name="Pull">How strongly the cause binds it, 0 (not at all) to 0.95: the correlation of two hidden severities
/// that are both bound so (a one-factor Gaussian copula).</param>
/// <param name="Then">What it brings; nothing is left as it was when the list is empty.</param>
/// <param name="Found">Looked at: true it is so, false it is not; null while nobody knows.</param>
public sealed record Discovery(
    Guid Id, string Words, double Odds, string Cause, double Pull, ImmutableArray<Consequence> Then, bool? Found)
{
    public const double StrongestPull = 0.95;

    public Refusal? Wrong =>
        (string.IsNullOrWhiteSpace(Words) || Words.Length > Check.LongestText ? Refusal.Of("what may be found", Words, $"give it a few words, at most {Check.LongestText} characters") : null)
        ?? (Odds is >= 0 and <= 1 ? null : Refusal.Of($"odds of \"{Words}\"", $"{Odds}", "give a chance from 0 to 1"))
        ?? (Pull is >= 0 and <= StrongestPull ? null : Refusal.Of($"pull of the cause of \"{Words}\"", $"{Pull}", $"give a number from 0 to {StrongestPull}"))
        ?? (Cause is null || Then.IsDefault ? Refusal.Of($"cause or consequences of \"{Words}\"", null, "they may be empty, but must be there") : null)
        ?? Then.Select(c => c.Hours.Wrong ?? c.Days.Wrong ?? c.Cost.Spread.Wrong).FirstOrDefault(r => r is not null)?.In($"consequence of \"{Words}\"");
}

/// <summary>What a discovery adds to one job.</summary>
/// <param name="Job">The job that grows; null for the one that looks.</param>
/// <param name="Hours">Own hours more.</param>
/// <param name="Days">Days of waiting more, behind its own work.</param>
public sealed record Consequence(Guid? Job, ThreePoint Hours, ThreePoint Days, Cost Cost);
