using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice;

/// <summary>On which side of the own work a lead time lies.</summary>
public enum LeadSide
{
    /// <summary>A supply: the job cannot begin before it is here.</summary>
    Before,

    /// <summary>A cure, or work sent out afterwards: what follows waits for it.</summary>
    Behind,
}

/// <summary>Days that pass without own work: stock or parts on order, paint that cures, plating sent out.</summary>
/// <param name="Words">What is waited for.</param>
/// <param name="Days">Calendar days from the ordering (or from the end of the own work) until it is here.</param>
/// <param name="Price">All of it.</param>
/// <param name="Deposit">Share of the price that is paid when ordering, 0 to 1; the rest when it is here.</param>
/// <param name="Ordered">The day it was ordered or sent; null while it is not.</param>
/// <param name="Here">It has come; nothing is waited for any more.</param>
public sealed record Lead(string Words, LeadSide Side, ThreePoint Days, Cost Price, double Deposit, DateOnly? Ordered, bool Here)
{
    public Refusal? Wrong =>
        (string.IsNullOrWhiteSpace(Words) || Words.Length > Check.LongestText ? Refusal.Of("what is waited for", Words, $"give it a few words, at most {Check.LongestText} characters") : null)
        ?? (Enum.IsDefined(Side) ? null : Refusal.Of("side of the lead time", $"{Side}", "give Before or Behind"))
        ?? Days.Wrong?.In($"days of \"{Words}\"") ?? Price.Spread.Wrong?.In($"price of \"{Words}\"")
        ?? (Deposit is >= 0 and <= 1 ? null : Refusal.Of($"deposit on \"{Words}\"", $"{Deposit}", "give a share of the price from 0 to 1"));
}
