using System.Collections.Frozen;
using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Trade;

/// <param name="Code">ISO 4217, three capitals.</param>
/// <param name="Number">The same in three figures.</param>
public sealed record Currency(string Code, string Number, string Name, Source Source);

/// <summary>The currencies of ISO 4217 that things are paid in.</summary>
public static class Currencies
{
    public static ImmutableArray<Currency> All { get; } = Table.Read("Currencies/currencies.csv", row =>
        new Currency(row["code"], row["number"], row["name"], row.Source()));

    static readonly FrozenDictionary<string, Currency> ByCode = All.ToFrozenDictionary(c => c.Code);

    /// <summary>Null when no currency bears the code.</summary>
    public static Currency? Find(string? code) => code is null ? null : ByCode.GetValueOrDefault(code);

    /// <summary>Null when the code is a currency's, else the sentence that says what would be right.</summary>
    public static Refusal? Wrong(string field, string? code)
    {
        if (Find(code) is not null) return null;
        var meant = Find(code?.Trim().ToUpperInvariant());
        return Refusal.Of(field, code, meant is null ? "give its code of three capitals (ISO 4217), such as GBP" : $"write it {meant.Code}");
    }
}
