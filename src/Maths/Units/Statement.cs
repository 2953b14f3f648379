using System.Collections.Immutable;

namespace WitnessMark.Maths.Units;

/// <summary>One value of a statement before its unit is settled.</summary>
/// <param name="Unit">The unit written with it; none for a bare number.</param>
readonly record struct Part<TUnit>(double Value, TUnit? Unit, bool HasFraction = false, bool BarePoint = false) where TUnit : struct;

/// <summary>What a person writes for one quantity: a value, or repeats parted by <c>;</c>, and perhaps one ± at the end.</summary>
/// <param name="PlusMinus">None where no ± is written.</param>
/// <param name="Unit">What bare numbers take: the one unit written elsewhere in the statement, else none.</param>
sealed record Statement<TUnit>(ImmutableArray<Part<TUnit>> Values, Part<TUnit>? PlusMinus, TUnit? Unit) where TUnit : struct;

static class Statement
{
    const int LongestText = 200;

    /// <param name="one">Reads one value.</param>
    /// <param name="example">What would be right.</param>
    public static Parsed<Statement<TUnit>> Read<TUnit>(
        string? text, string field, string example, Func<string, Parsed<Part<TUnit>>> one) where TUnit : struct
    {
        if (string.IsNullOrWhiteSpace(text)) return Refusal.Of(field, text?.Trim(), $"write {example}");
        if (text.Length > LongestText) return Refusal.Of(field, text, $"write at most {LongestText} characters, such as {example}");
        var tidy = Tidy.Text(text);
        var sides = tidy.Split('±');
        if (sides.Length > 2) return Refusal.Of(field, text, "write one ± at most");

        var values = ImmutableArray.CreateBuilder<Part<TUnit>>();
        foreach (var piece in sides[0].Split(';'))
        {
            if (piece.Trim() is not { Length: > 0 } said) return Refusal.Of(field, text, $"write a value before ; and before ±, such as {example}");
            var read = one(said);
            if (read.Refusal is { } refused) return refused;
            values.Add(read.Value);
        }
        Part<TUnit>? plusMinus = null;
        if (sides.Length == 2)
        {
            if (sides[1].Trim() is not { Length: > 0 } said) return Refusal.Of(field, text, "write a value after ±");
            var read = one(said);
            if (read.Refusal is { } refused) return refused;
            if (read.Value.Value <= 0) return Refusal.Of(field, text, "write a ± that is more than nought");
            plusMinus = read.Value;
        }
        return Settle(text, field, values.ToImmutable(), plusMinus);
    }

    /// <summary>A bare number beside others takes their unit, if they agree on one.</summary>
    static Parsed<Statement<TUnit>> Settle<TUnit>(
        string text, string field, ImmutableArray<Part<TUnit>> values, Part<TUnit>? plusMinus) where TUnit : struct
    {
        var all = plusMinus is { } last ? values.Add(last) : values;
        var said = all.Where(p => p.Unit is not null).Select(p => p.Unit!.Value).Distinct().ToList();
        if (said.Count > 1 && all.Any(p => p.Unit is null))
            return Refusal.Of(field, text, "it has more than one unit and a number without any; write the unit behind every number");
        return new Statement<TUnit>(values, plusMinus, said.Count == 1 ? said[0] : null);
    }
}
