using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Keeping;

/// <summary>What every kept row must be, and which facts stand.</summary>
public static class Rows
{
    /// <summary>Most lines, pictures or fasteners one row holds.</summary>
    public const int LongestList = 500;

    /// <summary>Those not taken back, in the order given.</summary>
    public static ImmutableArray<T> Standing<T>(IEnumerable<T> facts, IEnumerable<TakenBack> takenBack) where T : IFact
    {
        var gone = takenBack.Select(t => t.FactId).ToHashSet();
        return [.. facts.Where(f => !gone.Contains(f.Id))];
    }

    internal static Refusal? Wrong(IKept row) =>
        (row.Id == Guid.Empty ? Refusal.Of("id", null, "it is made where the entry is made") : null)
        ?? (row.VehicleId == Guid.Empty ? Refusal.Of("vehicle", null, "say which vehicle it belongs to") : null)
        ?? (row is IFact fact ? Check.Short("device", fact.Device) ?? Dated("time it was seen", DateOnly.FromDateTime(fact.At.UtcDateTime)) : null);

    /// <summary>A day that nobody gave reads as the year 1.</summary>
    internal static Refusal? Dated(string field, DateOnly day) =>
        day.Year is >= 1900 and < 2200 ? null
            : Refusal.Of(field, day.Year < 2 ? null : $"{day:yyyy-MM-dd}", "give a date such as 2031-05-28, from 1900 to 2199");

    internal static Refusal? NotBefore(string field, DateOnly day, string earlier, DateOnly than) =>
        day >= than ? null : Refusal.Of(field, $"{day:yyyy-MM-dd}", $"it must not be before {earlier}, {than:yyyy-MM-dd}");

    internal static Refusal? Counted(string field, int count, int least = 0) =>
        count >= least && count <= 1_000_000 ? null : Refusal.Of(field, $"{count}", $"give a whole number from {least} to 1000000");

    internal static Refusal? Pointed(string field, Guid id) => id == Guid.Empty ? Refusal.Of(field, null, "choose one") : null;

    /// <summary>A list that is there, not too long, and right in each row.</summary>
    internal static Refusal? Each<T>(string field, ImmutableArray<T> rows, Func<T, Refusal?> wrong) =>
        Check.Listed(field, rows.IsDefault)
        ?? (rows.Length > LongestList ? Refusal.Of(field, $"{rows.Length} rows", $"at most {LongestList} are kept in one entry") : null)
        ?? rows.Select(wrong).FirstOrDefault(r => r is not null);

    internal static Refusal? Photographed(ImmutableArray<string> pictures) =>
        Each("pictures", pictures, p => PictureKind.IsId(p) ? null : Refusal.Of("picture", p, "give the id that the picture was kept under"));
}
